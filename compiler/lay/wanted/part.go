package wanted

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"seamwarden/compiler/condition"
	"seamwarden/compiler/lay"
	"seamwarden/compiler/model"
	"seamwarden/compiler/outline"
	"seamwarden/dsl/finding"
)

// part is what a cut line, or a strip, takes from a material. Parts with a reason why
// not are not laid.
type part struct {
	cond   condition.Cond
	number int
	name   string
	span   finding.Span
	why    string

	piece  *model.Piece
	drawn  *model.Drawn
	widths map[string]float64 // what is added outside each edge, in millimetres
	fold   string             // the edge on the fold, "" for none
	strip  *model.Strip

	drawnUp, mirrored, either int
	cut                       lay.Angle
}

// noOutline is the reason of a piece that is not drawn.
const noOutline = "no outline"

// partsOf lists what is cut from a material, in the order of the source.
func (plan *Plan) partsOf(m *model.Material) (all []*part) {
	for _, p := range plan.pattern.Pieces {
		for _, c := range p.Cuts {
			if c.Material == m {
				all = append(all, plan.cut(c)...)
			}
		}
	}
	for _, t := range plan.pattern.Strips {
		if t.Material == m {
			all = append(all, ofStrip(t))
		}
	}
	return all
}

// cut gives a cut line once for each drawing of its piece, and once for the garments in
// which there is none.
func (plan *Plan) cut(c *model.Cut) (all []*part) {
	space := plan.pattern.Space
	left := space.And(c.Cond, c.Piece.Cond)
	for _, d := range c.Piece.Outlines {
		here := space.And(left, d.Cond)
		if d.Art == nil || here == condition.False {
			continue
		}
		left = space.Diff(left, d.Cond)
		x := &part{cond: here, number: c.Piece.Number, name: c.Piece.Name, span: c.Span, piece: c.Piece, drawn: d}
		x.hands(c)
		x.lie(c)
		if sewingLine(d) {
			x.widths = plan.allowances(c, here)
		}
		all = append(all, x)
	}
	if space.And(left, plan.pattern.Valid) != condition.False {
		all = append(all, &part{cond: left, name: c.Piece.Name, span: c.Span, why: noOutline})
	}
	return all
}

// sewingLine reports whether a drawing shows, in any size, the line to sew along.
func sewingLine(d *model.Drawn) bool {
	return slices.ContainsFunc(d.Art.Sizes, func(s outline.Sized) bool { return s.Allowance == outline.Excluded })
}

// hands counts the parts by hand. What is the same either way up, or has two faces
// alike, has none.
func (x *part) hands(c *model.Cut) {
	for _, i := range c.Instances {
		switch {
		case c.Lay.Fold || c.Material.NoRightSide:
			x.either++
		case i.Hand > 0:
			x.drawnUp++
		case i.Hand < 0:
			x.mirrored++
		case c.Lay.Alike && !c.Piece.Symmetric:
			x.drawnUp++ // all the same way up, whichever that is
		default:
			x.either++
		}
	}
}

// lie says how the part lies to the selvedges and to a fold.
func (x *part) lie(c *model.Cut) {
	switch {
	case c.Lay.Bias && c.Piece.Symmetric:
		x.cut = lay.EitherBias
	case c.Lay.Bias:
		x.cut = lay.Bias
	case c.Lay.Crossgrain:
		x.cut = lay.Crosswise
	}
	if c.Lay.Fold {
		if c.Lay.FoldEdge == nil {
			x.why = fmt.Sprintf("it is not said which edge of the %s lies on the fold", Lower(x.name))
			return
		}
		x.fold = c.Lay.FoldEdge.ID
	}
}

func ofStrip(t *model.Strip) *part {
	x := &part{cond: t.Cond, number: t.Number, name: t.Name, span: t.Span, strip: t, either: t.Count}
	switch {
	case t.Lay.Bias:
		x.cut = lay.EitherBias
	case t.Lay.Crossgrain:
		x.cut = lay.Crosswise
	}
	return x
}

// byArea puts the parts that take the most cloth first, by the first size in which each
// is drawn.
func byArea(parts []*part) []*part {
	sorted := slices.Clone(parts)
	slices.SortStableFunc(sorted, func(a, b *part) int { return cmp.Compare(b.area(), a.area()) })
	return sorted
}

func (x *part) area() float64 {
	n := float64(x.drawnUp + x.mirrored + x.either)
	switch {
	case x.strip != nil:
		return n * x.strip.Width.Length.MM() * x.strip.Length.Length.MM()
	case x.drawn != nil && len(x.drawn.Art.Sizes) > 0:
		return n * x.drawn.Art.Sizes[0].Area()
	}
	return 0
}

// alike is the same for two lists of parts that are cut alike.
func alike(parts []*part) string {
	var all []string
	for _, x := range parts {
		all = append(all, fmt.Sprint(x.piece != nil, x.name, x.number, x.drawnFile(), x.widths, x.fold, x.area(), x.drawnUp, x.mirrored, x.either, x.cut))
	}
	slices.Sort(all)
	return strings.Join(all, "\n")
}

func (x *part) drawnFile() string {
	if x.drawn == nil {
		return ""
	}
	return x.drawn.File.Text
}

// outlineFor gives the drawing in a size, nil if there is none.
func (x *part) outlineFor(p *model.Pattern, size int) *outline.Outline {
	return x.drawn.Outline(p, size)
}

// Lower begins a name with a small letter, unless it is an abbreviation.
func Lower(s string) string {
	if len(s) > 1 && s[0] >= 'A' && s[0] <= 'Z' && s[1] >= 'a' && s[1] <= 'z' {
		return string(s[0]+'a'-'A') + s[1:]
	}
	return s
}
