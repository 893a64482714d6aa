package check

import (
	"fmt"
	"math"
	"slices"

	"seamwarden/compiler/condition"
	"seamwarden/compiler/model"
	"seamwarden/compiler/outline"
	"seamwarden/dsl/finding"
)

func init() {
	register(Rule{ID: "grain-not-drawn", Severity: finding.Warning, Category: "outlines", FromAbsence: true, run: grainMissing,
		Purpose: "A piece is drawn without a grain line, and others have one.",
		Why:     "The grain line says how a piece lies on the cloth; without one it is taken to run straight down the drawing."})
	register(Rule{ID: "grain-turns-between-sizes", Severity: finding.Warning, Category: "outlines", run: grainTurns,
		Purpose: "The grain line lies another way in one size than in the others.",
		Why:     "Cut so, that size hangs and stretches otherwise than all others, and needs other cloth."})
	register(Rule{ID: "grain-not-along-the-fold", Severity: finding.Error, Category: "outlines", run: grainOffFold,
		Purpose: "A piece is cut on the fold, and its grain line does not run as the fold does.",
		Why:     "Cloth is folded along its grain. A piece can lie with its edge on the fold or with its grain line along the grain, and here not with both."})
}

// grainMissing keeps silent about a pattern in which no piece has a grain line: all of
// them run straight down then.
func grainMissing(r *run) {
	var all drawings
	some := false
	for _, p := range r.Pieces {
		for _, d := range p.Outlines {
			if d.Art == nil {
				continue
			}
			for _, s := range d.Art.Sizes {
				some = some || s.Grain != nil
			}
			bad, _ := r.inOutline(d, func(o *outline.Outline) bool { return o.Grain == nil })
			all.add(r, r.Space.All(bad, p.Cond, d.Cond), at(d.File.Span, "no grain line", fmt.Sprintf("%s is drawn without a grain line.", Upper(the(p.Name))),
				"Draw it as a straight line with the id \"grain\"."))
		}
	}
	if some {
		all.report(r)
	}
}

// grainTurns compares how the grain lies in a size and in most. Pieces grow, and an edge
// may turn a little beside the grain; more is a size that was turned on the sheet while
// its grain line was not.
func grainTurns(r *run) {
	const most = 20 // degrees (common practice, no source)
	var all drawings
	r.eachDrawn(func(p *model.Piece, d *model.Drawn, where condition.Cond) {
		var angles []float64
		if len(d.Art.Sizes) < 3 {
			return // of two nobody knows which is right
		}
		edge := d.Art.Sizes[0].Edges[0].Name
		for _, s := range d.Art.Sizes {
			if s.Grain != nil {
				angles = append(angles, besideGrain(s.Outline, edge))
			}
		}
		if len(angles) < 3 {
			return
		}
		slices.Sort(angles)
		usual := angles[len(angles)/2]
		bad, first := r.inOutline(d, func(o *outline.Outline) bool { return o.Grain != nil && math.Abs(besideGrain(o, edge)-usual) > most })
		bad = r.unsaid(edgesOf{p}, bad)
		if first != nil {
			r.tell(grainOf{d}, bad)
			all.add(r, r.Space.And(bad, where), also(at(d.File.Span, "in this file", fmt.Sprintf("The grain line of %s lies another way than in the other sizes.", the(p.Name)),
				"Turn the grain line with the piece, or the piece back."), first.Grain.Span, "this line"))
		}
	})
	all.report(r)
}

// besideGrain is the angle between the grain and the chord of an edge, in degrees.
func besideGrain(o *outline.Outline, edge string) float64 {
	e := o.Edge(edge)
	if e == nil {
		return math.NaN()
	}
	c := e.Curves
	return between(o.Grain.From, o.Grain.To, c[0].P[0], c[len(c)-1].P[3])
}

// grainOff is how far a grain line may turn away from where it ought to run, in degrees:
// 2 mm in 10 cm (common practice, no source).
const grainOff = 1.2

func grainOffFold(r *run) {
	var all drawings
	r.eachCutOnFold(func(p *model.Piece, d *model.Drawn, c *model.Cut) {
		if c.Lay.Bias {
			return
		}
		off := 0.0
		bad, first := r.inOutline(d, func(o *outline.Outline) bool {
			e := o.Edge(c.Lay.FoldEdge.ID)
			if o.Grain == nil || e == nil || e.Form() != outline.Straight {
				return false
			}
			from, to := e.Curves[0].P[0], e.Curves[len(e.Curves)-1].P[3]
			turn := between(o.Grain.From, o.Grain.To, from, to)
			if c.Lay.Crossgrain { // on a lengthwise fold, or on a crosswise one
				turn = min(turn, 90-turn)
			}
			if off == 0 && turn > grainOff {
				off = turn
			}
			return turn > grainOff
		})
		if first == nil {
			return
		}
		r.tell(grainOf{d}, bad)
		all.add(r, r.Space.All(bad, p.Cond, d.Cond, c.Cond), also(at(c.Span, "on the fold", fmt.Sprintf("The grain line of %s is drawn %.0f° off the edge that lies on the fold.", the(p.Name), off),
			fmt.Sprintf("Turn the grain line until it runs beside the %s, or look at which edge lies on the fold.", edgeCalled(c.Lay.FoldEdge.Name))), first.Grain.Span, "this line"))
	})
	all.report(r)
}

// eachCutOnFold calls f for every drawing of a piece and every line that cuts the piece on
// the fold.
func (r *run) eachCutOnFold(f func(p *model.Piece, d *model.Drawn, c *model.Cut)) {
	for _, p := range r.Pieces {
		for _, d := range p.Outlines {
			for _, c := range p.Cuts {
				if d.Art != nil && c.Lay.Fold && c.Lay.FoldEdge != nil {
					f(p, d, c)
				}
			}
		}
	}
}

// between is the angle of two lines in degrees, from 0 to 90.
func between(a, b, c, d outline.Point) float64 {
	x, y, u, v := b.X-a.X, b.Y-a.Y, d.X-c.X, d.Y-c.Y
	return math.Atan2(math.Abs(x*v-y*u), math.Abs(x*u+y*v)) * 180 / math.Pi
}
