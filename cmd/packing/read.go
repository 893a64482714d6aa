package main

import (
	"encoding/json"
	"fmt"
	"math"
	"os"

	"seamwarden/compiler/lay/pack"
	"seamwarden/compiler/lay/verify"
)

// width is about how many units wide a strip becomes.
const width = 200_000

// read gives an instance as a problem, and the area of its shapes in square units.
func read(path string) (p pack.Problem, area float64, err error) {
	src, err := os.ReadFile(path)
	if err != nil {
		return p, 0, err
	}
	var d struct {
		Width float64 `json:"strip_width"`
		Items []struct {
			Quantity  int
			Rotations []float64
			Polygon   [][2]float64
		}
	}
	if err := json.Unmarshal(src, &d); err != nil {
		return p, 0, err
	}
	if d.Width <= 0 {
		return p, 0, fmt.Errorf("the strip is %v wide", d.Width)
	}
	scale := math.Floor(width / d.Width)
	p.Width = int64(math.Round(d.Width * scale))
	for kind, it := range d.Items {
		s := pack.Shape{Kind: kind}
		for _, degrees := range it.Rotations {
			s.Poses = append(s.Poses, pack.Pose{Outline: turned(it.Polygon, degrees, scale)})
		}
		for range it.Quantity {
			p.Shapes = append(p.Shapes, s)
			area += float64(pack.Area2(s.Poses[0].Outline)) / 2
		}
	}
	return p, area, nil
}

// turned is an outline turned by quarters of a circle, on the grid.
func turned(polygon [][2]float64, degrees, scale float64) (ring []pack.Point) {
	c, s := int64(math.Round(math.Cos(degrees*math.Pi/180))), int64(math.Round(math.Sin(degrees*math.Pi/180)))
	for _, v := range polygon {
		x, y := int64(math.Round(v[0]*scale)), int64(math.Round(v[1]*scale))
		ring = append(ring, pack.Point{X: x*c - y*s, Y: x*s + y*c})
	}
	return ring
}

// check looks at a layout with other eyes than those that found it.
func check(p pack.Problem, l pack.Layout) error {
	var laid []verify.Laid
	for i, at := range l.Places {
		pose := p.Shapes[i].Poses[at.Pose]
		one := verify.Laid{AtEdge: pose.AtEdge}
		for _, v := range pose.Outline {
			one.Outline = append(one.Outline, verify.Point{X: v.X + at.At.X, Y: v.Y + at.At.Y})
		}
		laid = append(laid, one)
	}
	return verify.Lay(p.Width, l.Length, laid)
}
