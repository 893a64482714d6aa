package html

import (
	"fmt"

	"seamwarden/compiler/booklet"
	"seamwarden/compiler/figure"
)

// lengthOf words whole centimetres, for the invented size table.
func lengthOf(cm int) booklet.Measure {
	return booklet.Measure{Imperial: fmt.Sprintf("%.1f\u00a0in", float64(cm)/2.54), Metric: fmt.Sprintf("%d\u00a0cm", cm), MetricFirst: true}
}

var (
	black = figure.Paint{}
	white = figure.Paint{R: 255, G: 255, B: 255}
	grey  = figure.Paint{R: 0xd9, G: 0xd9, B: 0xd9}
	red   = figure.Paint{R: 0xc0, G: 0x20, B: 0x20}
	none  = figure.Paint{None: true}
)

// line is a path of straight lines through the points, closed if it has a fill.
func line(fill figure.Paint, xy ...float64) *figure.Path {
	p := &figure.Path{Fill: fill, Stroke: black, Width: 0.8, Join: "round", Cap: "round"}
	for i := 0; i < len(xy); i += 2 {
		op := byte('L')
		if i == 0 {
			op = 'M'
		}
		p.Commands = append(p.Commands, figure.Command{Op: op, Points: [3]figure.Point{{X: xy[i], Y: xy[i+1]}}})
	}
	if !fill.None {
		p.Commands = append(p.Commands, figure.Command{Op: 'Z'})
	}
	return p
}

func dashed(p *figure.Path) *figure.Path {
	p.Dash, p.DashStart = []float64{2, 1.5}, 0.5
	return p
}

func skirtArt(flared bool) *figure.Drawing {
	foot := 6.0
	if flared {
		foot = 0
	}
	hem := &figure.Path{Fill: none, Stroke: black, Width: 0.5, Commands: []figure.Command{
		{Op: 'M', Points: [3]figure.Point{{X: foot, Y: 86}}},
		{Op: 'C', Points: [3]figure.Point{{X: 20, Y: 92}, {X: 40, Y: 92}, {X: 60 - foot, Y: 86}}}}}
	d := &figure.Drawing{Width: 62, Height: 96, NaturalWidth: 50, Title: "Skirt, front", Items: []figure.Item{
		line(white, 16, 8, 44, 8, 60-foot, 90, foot, 90),
		line(grey, 16, 2, 44, 2, 44, 8, 16, 8),
		dashed(line(none, 30, 8, 40, 90)), dashed(hem)}}
	if flared {
		d.Items = append(d.Items, line(none, 14, 16, 11, 32))
	}
	return d
}

func pocketArt() *figure.Drawing {
	stitch := dashed(line(none, 18, 20, 18, 60))
	stitch.Stroke = red
	ring := line(white, 52, 52, 60, 52, 60, 60, 52, 60)
	ring.EvenOdd, ring.Cap, ring.Join = true, "square", "bevel"
	return &figure.Drawing{Width: 90, Height: 80, NaturalWidth: 55, Desc: "The front lies wrong side up; dots mark the ends of the opening.",
		Items: []figure.Item{line(grey, 10, 5, 80, 5, 84, 75, 6, 75), stitch, ring,
			&figure.Label{At: figure.Point{X: 50, Y: 30}, Text: "wrong side", Size: 6, Anchor: "middle", Italic: true},
			&figure.Label{At: figure.Point{X: 14, Y: 60}, Text: "opening", Size: 5, Anchor: "start", Angle: -90, Fill: red}}}
}
