package assembly_test

import (
	"fmt"
	"math"
	"math/rand/v2"
	"strings"
)

// The oracle of hands: paper pieces. Every pattern piece gets a random polygon that
// is nowhere symmetric. Parts are cut from it by laying it one way up or the other,
// and sewn by laying two of them on each other, right sides together, with their
// edges even. Then it is looked at which ends of the edges lie on each other. No
// rule of signs is used.

// point and outline are on the table, x to the right, y away from the cutter.
type point struct{ x, y float64 }

// outline is a polygon by its corners; edge k runs from corner k to corner k+1.
// The order of the corners names the edges and is kept through every move.
type outline []point

// scrap makes a random polygon, drawn clockwise: corners round a middle, each at its
// own distance.
func scrap(r *rand.Rand, n int) outline {
	p := make(outline, n)
	for k := range p {
		a := -2 * math.Pi * (float64(k) + 0.7*r.Float64()) / float64(n)
		d := 5 + 5*r.Float64()
		p[k] = point{d * math.Cos(a), d * math.Sin(a)}
	}
	return p
}

func (p outline) each(f func(point) point) outline {
	q := make(outline, len(p))
	for k := range p {
		q[k] = f(p[k])
	}
	return q
}

// turnedOver is the polygon after it has been turned over on the table.
func (p outline) turnedOver() outline {
	return p.each(func(a point) point { return point{-a.x, a.y} })
}

// unfolded is the other half of a part that is cut on the fold along an edge.
func (p outline) unfolded(fold int) outline {
	a, b := p.edge(fold)
	dx, dy := b.x-a.x, b.y-a.y
	return p.each(func(c point) point {
		t := ((c.x-a.x)*dx + (c.y-a.y)*dy) / (dx*dx + dy*dy)
		return point{2*(a.x+t*dx) - c.x, 2*(a.y+t*dy) - c.y}
	})
}

func (p outline) edge(k int) (a, b point) { return p[k], p[(k+1)%len(p)] }

// holds reports whether a point lies inside, by counting the edges to its right.
func (p outline) holds(c point) (in bool) {
	for k := range p {
		a, b := p.edge(k)
		if (a.y > c.y) != (b.y > c.y) && c.x < a.x+(b.x-a.x)*(c.y-a.y)/(b.y-a.y) {
			in = !in
		}
	}
	return
}

// inward gives a point just inside the middle of an edge.
func (p outline) inward(k int) point {
	a, b := p.edge(k)
	m := point{(a.x + b.x) / 2, (a.y + b.y) / 2}
	for _, s := range []float64{1e-6, -1e-6} {
		if c := (point{m.x - s*(b.y-a.y), m.y + s*(b.x-a.x)}); p.holds(c) {
			return c
		}
	}
	panic("an edge without an inside")
}

// laidTo moves a polygon, without turning it over, so that its edge k lies on the
// edge between two points, a's end on from.
func (p outline) laidTo(k int, from, to point) outline {
	a, b := p.edge(k)
	u, v := complex(b.x-a.x, b.y-a.y), complex(to.x-from.x, to.y-from.y)
	turn := v / u // the edges of a seam are of one length: scale them to it
	return p.each(func(c point) point {
		w := turn * complex(c.x-a.x, c.y-a.y)
		return point{from.x + real(w), from.y + imag(w)}
	})
}

// sewn lays two parts on each other, right sides together, edge j of the one on
// edge k of the other, both bodies on the same side of the seam. The first lies face
// up, the second face down. It reports whether the beginnings of both edges, as
// drawn, come to lie on each other.
func sewn(faceUp outline, j int, other outline, k int) (beginningsMeet bool) {
	a, b := faceUp.edge(j)
	down := other.turnedOver()
	in := faceUp.inward(j)
	for _, ends := range [][2]point{{a, b}, {b, a}} {
		laid := down.laidTo(k, ends[0], ends[1])
		c := laid.inward(k)
		if side(a, b, in) == side(a, b, c) {
			start, _ := laid.edge(k)
			return math.Hypot(start.x-a.x, start.y-a.y) < math.Hypot(start.x-b.x, start.y-b.y)
		}
	}
	panic("no way to lay the two with their bodies on one side")
}

// side tells on which side of a line a point lies.
func side(a, b, c point) bool { return (b.x-a.x)*(c.y-a.y)-(b.y-a.y)*(c.x-a.x) > 0 }

// paper is a pattern piece of the oracle.
type paper struct {
	name        string
	kind        string // pair, fold, single
	drawn       string // left, right, "" if the pattern does not say
	in          bool   // worn face in
	up          string // right, wrong: of a single; "" if the pattern does not say
	seams       int    // its edges are p0, e0, q0, p1, e1, q1, …
	shape       outline
	renamed     map[int]string // edges that have another name
	prefix, end []string       // edges at the fold
}

// edges lists the names of the edges, clockwise.
func (p *paper) edges() []string {
	names := append([]string(nil), p.prefix...)
	for k := range p.seams {
		for _, n := range []string{"p", "e", "q"} {
			names = append(names, fmt.Sprint(n, k))
		}
	}
	names = append(names, p.end...)
	for k, n := range p.renamed {
		names[k] = n
	}
	return names
}

// at gives the number of seam edge k; its neighbours stand before and after it.
func (p *paper) at(k int) int { return len(p.prefix) + 3*k + 1 }

// faceUp gives the outline of a part as it lies with its right side up. lies says
// which of the two ways it is where the pattern leaves that open.
//
// Of a pair, the part that is worn on the side that is drawn shows the drawn outline
// to somebody who looks at the wearer, the other one its mirror image; a part that is
// worn face in shows its wrong side. Of a part cut on the fold each half may be the
// drawn one.
func (p *paper) faceUp(side string, lies bool) outline {
	switch p.kind {
	case "single":
		if (p.up == "right") || p.up == "" && lies {
			return p.shape
		}
		return p.shape.turnedOver()
	case "fold":
		if (side == "right") == lies {
			return p.shape
		}
		return p.shape.unfolded(0)
	}
	drawn := p.drawn
	if drawn == "" {
		drawn = map[bool]string{true: "right", false: "left"}[lies]
	}
	seen := p.shape
	if side != drawn {
		seen = seen.turnedOver()
	}
	if p.in {
		return seen.turnedOver()
	}
	return seen
}

// open reports whether the pattern leaves it open which way the piece lies.
func (p *paper) open() bool {
	return p.kind == "fold" || p.kind == "pair" && p.drawn == "" || p.kind == "single" && p.up == ""
}

func (p *paper) source() string {
	var b strings.Builder
	fmt.Fprintf(&b, "piece %s {\n", p.name)
	if p.drawn != "" {
		fmt.Fprintf(&b, "  drawn as %s\n", p.drawn)
	}
	if p.in {
		b.WriteString("  worn face in\n")
	}
	fmt.Fprintf(&b, "  edges %s\n", strings.Join(p.edges(), ", "))
	switch p.kind {
	case "pair":
		b.WriteString("  cut 2 main mirrored\n")
	case "fold":
		b.WriteString("  cut 1 main on fold spine\n")
	default:
		fmt.Fprintf(&b, "  cut 1 main%s\n", map[string]string{"right": " right side up", "wrong": " wrong side up", "": ""}[p.up])
	}
	return b.String() + "}\n\n"
}
