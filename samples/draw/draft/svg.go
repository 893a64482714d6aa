package draft

import (
	"fmt"
	"html"
	"maps"
	"math"
	"slices"
	"strconv"
	"strings"
)

// Drawing is a piece in all its sizes.
type Drawing struct {
	Title    string // what is written on it
	Included bool   // the lines are cut along; else they are sewn along
	Sizes    []Sized
}

// Sized is a piece in the size of a name.
type Sized struct {
	Size string
	*Piece
}

// element is a drawn thing: the name that its id begins with, and the rest.
type element struct {
	tag, name, rest string
	edge            bool
}

// looksOther reports whether the name of an edge would be read as that of something
// else, such as fold-side of a fold line. Such an edge is named in words of its own.
func looksOther(edge string) bool {
	for _, kind := range []string{"corner-", "notch-", "mark-", "opening-", "fold-"} {
		if strings.HasPrefix(edge, kind) {
			return true
		}
	}
	return edge == "fold" || edge == "grain"
}

// SVG writes a drawing. What is alike in all sizes is written once; sizes that are alike
// throughout share a group. It is an error if a piece is not closed.
func (d *Drawing) SVG() ([]byte, error) {
	sizes := make([][]element, len(d.Sizes))
	for i, s := range d.Sizes {
		if err := s.closed(); err != nil {
			return nil, fmt.Errorf("%s in size %s: %w", d.Title, s.Size, err)
		}
		sizes[i] = s.elements()
	}
	var b strings.Builder
	min, max := d.box()
	w, h := max.X-min.X, max.Y-min.Y
	fmt.Fprintf(&b, "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"%smm\" viewBox=\"%s %s %s %s\" data-allowance=\"%s\" fill=\"none\" stroke=\"#000\">\n",
		num(w), num(min.X), num(min.Y), num(w), num(h), map[bool]string{true: "included", false: "none"}[d.Included])
	fmt.Fprintf(&b, "  <title>%s</title>\n", html.EscapeString(d.Title))
	shared, met := alike(sizes), map[string]int{}
	for _, e := range shared {
		met[e.name]++
		b.WriteString("  " + e.written("", met[e.name]) + "\n")
	}
	if len(shared) < len(sizes[0]) {
		d.groups(&b, sizes, shared)
	}
	b.WriteString("</svg>\n")
	return []byte(b.String()), nil
}

// groups writes what differs from size to size.
func (d *Drawing) groups(b *strings.Builder, sizes [][]element, shared []element) {
	done := make([]bool, len(sizes))
	for i := range sizes {
		if done[i] {
			continue
		}
		names := []string{d.Sizes[i].Size}
		for k := i + 1; k < len(sizes); k++ {
			if slices.Equal(sizes[i], sizes[k]) {
				done[k], names = true, append(names, d.Sizes[k].Size)
			}
		}
		if len(names) == 1 {
			fmt.Fprintf(b, "  <g id=\"size-%s\">\n", names[0])
		} else {
			fmt.Fprintf(b, "  <g data-size=\"%s\">\n", strings.Join(names, ", "))
		}
		met := map[string]int{}
		for _, e := range sizes[i] {
			if met[e.name]++; !slices.Contains(shared, e) {
				b.WriteString("    " + e.written(names[0], met[e.name]) + "\n")
			}
		}
		b.WriteString("  </g>\n")
	}
}

// alike lists what every size has.
func alike(sizes [][]element) (shared []element) {
	for _, e := range sizes[0] {
		if !slices.ContainsFunc(sizes, func(s []element) bool { return !slices.Contains(s, e) }) {
			shared = append(shared, e)
		}
	}
	return
}

// written gives the tag with an id of its own; the count tells things of one name apart.
func (e element) written(size string, count int) string {
	id := e.name
	if id == "" {
		return "<" + e.tag + " " + e.rest + "/>"
	}
	if size != "" {
		id += "_" + size
	}
	if count > 1 {
		id += "_" + strconv.Itoa(count)
	}
	if e.edge && looksOther(e.name) {
		id += "\" data-edge=\"" + e.name
	}
	return fmt.Sprintf("<%s id=\"%s\" %s/>", e.tag, id, e.rest)
}

// notchLong is how far a notch reaches into the piece, markRound the radius of a mark.
const (
	notchLong = 5
	markRound = 2
)

func (p *Piece) elements() (all []element) {
	line := func(name string, path Path, how string) {
		all = append(all, element{tag: "path", name: name, rest: `d="` + path.data() + `"` + how})
	}
	for _, e := range p.Edges {
		line(e.Name, e.Path, "")
		all[len(all)-1].edge = true
	}
	for _, name := range slices.Sorted(maps.Keys(p.Folds)) {
		line("fold-"+name, p.Folds[name], ` stroke-dasharray="12 4"`)
	}
	for _, s := range p.Signs {
		if s.Notch {
			line("notch-"+s.Name, Line(s.Place, s.Place.Plus(s.Into.Times(notchLong))), "")
			continue
		}
		all = append(all, element{tag: "circle", name: "mark-" + s.Name, rest: fmt.Sprintf(`cx="%s" cy="%s" r="%d"`, num(s.Place.X), num(s.Place.Y), markRound)})
	}
	if p.Grain != nil {
		line("grain", p.Grain, "")
	}
	for _, l := range p.Decor {
		line("", l, ` stroke-dasharray="4 3"`)
	}
	return
}

// data writes a path as SVG does, in tenths of a millimetre.
func (p Path) data() string {
	b := "M" + pair(p.Start())
	for i := range p {
		q := p[i].P
		if p[i].Straight {
			b += "L" + pair(q[3])
		} else {
			b += "C" + pair(q[1]) + " " + pair(q[2]) + " " + pair(q[3])
		}
	}
	return b
}

func pair(p Point) string { return num(p.X) + " " + num(p.Y) }

// num writes a number of millimetres with one digit behind the point at most.
func num(v float64) string {
	v = math.Round(v*10) / 10
	if v == 0 {
		v = 0 // no sign before a zero
	}
	return strconv.FormatFloat(v, 'f', -1, 64)
}

// margin is left free round the largest size.
const margin = 5

// box is a rectangle round all sizes.
func (d *Drawing) box() (low, high Point) {
	low, high = At(math.Inf(1), math.Inf(1)), At(math.Inf(-1), math.Inf(-1))
	for _, s := range d.Sizes {
		for _, e := range s.Edges {
			for _, c := range e.Path {
				for k := range 17 {
					q := c.at(float64(k) / 16)
					low = At(math.Min(low.X, q.X), math.Min(low.Y, q.Y))
					high = At(math.Max(high.X, q.X), math.Max(high.Y, q.Y))
				}
			}
		}
	}
	low, high = At(math.Floor(low.X)-margin, math.Floor(low.Y)-margin), At(math.Ceil(high.X)+margin, math.Ceil(high.Y)+margin)
	return
}
