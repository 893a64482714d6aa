package main

import (
	"math"
	"testing"

	"seamwarden/compiler/outline"
	"seamwarden/samples/draw/draft"
)

// The closed skirt has the finished measures of its table. Waist and hip are measured
// once round: back, both side panels, and the front from one front seam to the other.
func TestSkirtMeasures(t *testing.T) {
	m := measure(t, "dusk-skirt")
	m.eachSize(func(i int) {
		for _, view := range []string{"-a", "-b"} {
			waist := 2*(m.long("back"+view, "waist")-skirtDartTakes) + 2*m.long("side-panel"+view, "waist") + m.long("under-front"+view, "waist")
			m.near("the waist of view"+view, waist, m.finished("waist", i), 1.5)
			m.near("the band", m.long("waistband", "bottom"), m.finished("waist", i)+m.long("over-front"+view, "waist"), 1.5)
			m.near("the length of view"+view, m.long("back"+view, "centre"), m.finished("length"+view, i), 0.2)
			hip := 2*m.across("back"+view, "side", "centre") + 2*m.across("side-panel"+view, "front-seam", "side") + m.across("over-front-a", "wrap", "panel") - skirtLap
			m.near("the hip of view"+view, hip, m.finished("hip", i), draft.Inch/4)
			hem := 2*m.long("back"+view, "hem") + 2*m.long("side-panel"+view, "hem") + m.long("under-front"+view, "hem")
			if hem < 1.2*hip {
				m.Errorf("size %s, view%s: the hem is only %.0f mm round; nobody can walk in that", m.Sizes[i], view, hem)
			}
		}
	})
}

// across is the width of a panel at the hip line: between the places of its two seams
// that lie 8 in below the waist at the middle of the back.
func (m *measured) across(piece, right, left string) float64 {
	at := func(edge string) float64 {
		for _, c := range m.outline(piece).Edge(edge).Curves {
			const parts = 1000
			for k := range parts {
				if p := bezier(c, float64(k)/parts); math.Abs(p.Y-skirtHipDepth) < 1 {
					return p.X
				}
			}
		}
		return math.NaN()
	}
	return math.Abs(at(right) - at(left))
}

// bezier is a place of a curve by the formula of its four points.
func bezier(c outline.Curve, t float64) draft.Point {
	s, p := 1-t, draft.Point{}
	for k, f := range [4]float64{s * s * s, 3 * s * s * t, 3 * s * t * t, t * t * t} {
		p = p.Plus(draft.Point(c.P[k]).Times(f))
	}
	return p
}

// Waist and hem run on smoothly over each seam: the two angles beside it make half a
// turn. The fold meets both at right angles.
func TestSkirtRunsOnOverSeams(t *testing.T) {
	m := measure(t, "dusk-skirt")
	m.eachSize(func(int) {
		for _, v := range []string{"-a", "-b"} {
			m.near("the waist at the side", m.inside("back"+v, "side")+m.inside("side-panel"+v, "waist"), 180, 1.5)
			m.near("the hem at the side", m.inside("back"+v, "hem")+m.inside("side-panel"+v, "side"), 180, 1.5)
			m.near("the waist at the front seam", m.inside("side-panel"+v, "front-seam")+m.inside("over-front"+v, "waist"), 180, 1.5)
			m.near("the hem at the front seam", m.inside("side-panel"+v, "hem")+m.inside("over-front"+v, "panel"), 180, 1.5)
			m.near("the waist at the fold", m.inside("back"+v, "waist"), 90, 1)
			m.near("the hem at the fold", m.inside("back"+v, "centre"), 90, 1)
		}
	})
}

// The hem hangs level: on the cone of the back its ends lie equally far from the point in
// which side and fold would meet, drawn on.
func TestSkirtHangsLevel(t *testing.T) {
	m := measure(t, "dusk-skirt")
	m.eachSize(func(int) {
		for _, v := range []string{"-a", "-b"} {
			side := m.outline("back" + v).Edge("side").Curves
			hip, hem := side[len(side)-1].P[0], side[len(side)-1].P[3]
			top := hem.Y - hem.X*(hem.Y-hip.Y)/(hem.X-hip.X)
			m.near("from the point to the hem at the side", math.Hypot(hem.X, hem.Y-top), m.ends("back"+v, "hem").Y-top, 3)
		}
	})
}
