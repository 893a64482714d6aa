package model

import (
	"slices"
	"strings"

	"seamwarden/compiler/condition"
	"seamwarden/dsl"
	"seamwarden/dsl/finding"
)

func splitPath(path string) []string { return strings.Split(path, ".") }

func join(parts []string) string { return strings.Join(parts, ".") }

// words turns an id into words: over-front becomes "over front".
func words(id string) string { return strings.ReplaceAll(id, "-", " ") }

// run resolves a reference with its alternatives and its stretch.
func (b *builder) run(r *dsl.Run, near []*Target) *Target {
	var t *Target
	if len(r.Alt) == 1 {
		t = b.resolve(r.Alt[0], near)
	} else {
		t = b.alternatives(r.Alt, near)
	}
	if r.From != nil && t != nil {
		t.From = b.point(r.From, append([]*Target{t}, near...))
		t.To = b.point(r.To, append([]*Target{t}, near...))
	}
	return t
}

// alternatives makes one target of several of which each garment has one.
func (b *builder) alternatives(refs []*dsl.Ref, near []*Target) *Target {
	t := &Target{Kind: ToAlternative}
	for _, r := range refs {
		if a := b.resolve(r, near); a != nil {
			t.Alt = append(t.Alt, a)
			t.Uses = append(t.Uses, a.Uses...)
			t.Instances = append(t.Instances, a.Instances...)
			t.Cond = b.Space.Or(t.Cond, a.Cond)
		}
	}
	if len(t.Alt) == 0 {
		return nil
	}
	t.Path, t.Span = t.Alt[0].Path, t.Alt[0].Span
	return t
}

// row resolves a list; what means nothing is left out of it.
func (b *builder) row(r *dsl.Row, near []*Target) (all []*Target) {
	if r == nil {
		return nil
	}
	for _, x := range r.Runs {
		if t := b.run(x, near); t != nil {
			all = append(all, t)
		}
	}
	return
}

// resolve finds what a reference means, or reports that it means nothing. near
// are the things named in the same sentence: a bare mark belongs to one of them.
func (b *builder) resolve(r *dsl.Ref, near []*Target) *Target {
	t := &Target{Path: join(r.Parts), Span: dsl.SpanOf(r.Tokens), Cond: condition.True}
	if len(r.Tokens) == 0 {
		t.Span = b.here
	}
	first, rest := r.Parts[0], r.Parts[1:]
	if b.lost[first] && b.names[first] == nil {
		return nil
	}
	switch x := b.names[first].(type) {
	case *Piece:
		x.Used = true
		return b.pieceTarget(t, x, rest)
	case *Seam:
		x.Used = true
		return b.seamTarget(t, x, rest)
	case *Notion:
		x.Used = true
		return b.notionTarget(t, x, rest)
	case *Part:
		x.Used = true
		return b.partTarget(t, x, rest)
	case *Strip:
		x.Used = true
		return b.stripTarget(t, x, rest)
	case *Bit:
		x.Used, x.Strip.Used = true, true
		t.Kind, t.Bit, t.Cond = ToBit, x, x.Cond
	case *Shaping:
		x.Used = true
		t.Kind, t.Shaping, t.Cond = ToShaping, x, x.Cond
	case *Material:
		t.Kind, t.Material, t.Cond = ToMaterial, x, x.Cond
	default:
		return b.otherTarget(t, r, near)
	}
	if len(rest) > 0 {
		b.reportOnce(noSuchPart(t.Span, t.Path, first, rest[0], nil), first+"."+rest[0])
		return nil
	}
	return t
}

// otherTarget tries gaps, and marks and edges of what stands near.
func (b *builder) otherTarget(t *Target, r *dsl.Ref, near []*Target) *Target {
	if g := b.gaps[r.Parts[0]]; g != nil && len(r.Parts) == 1 {
		g.Used = true
		t.Kind, t.Gap, t.Cond = ToGap, g, g.Cond
		return t
	}
	if len(r.Parts) == 1 {
		if m := markNear(r.Parts[0], near); m != nil {
			m.Used = true
			t.Kind, t.Mark, t.Piece, t.Cond = ToMark, m, m.Piece, m.Cond
			return t
		}
	}
	if r.Parts[0] == "left" || r.Parts[0] == "right" {
		t.Kind, t.Side = ToSide, sideNamed(r.Parts[0])
		return t
	}
	known := b.namesOf(func(any) bool { return true })
	for _, x := range near {
		for _, p := range x.pieces() {
			known = append(known, ids(p.Edges, func(e *Edge) string { return e.ID })...)
			known = append(known, ids(p.Marks, func(m *Mark) string { return m.ID })...)
		}
	}
	f := unknownName(t.Span, r.Parts[0], known, b.elsewhere(r.Parts[0]))
	if b.elsewhere(r.Parts[0]) == "" && len(near) == 0 { // near things have marks and edges that may be meant
		f = b.spelt(f, t.partAt(0), r.Parts[0], b.fitting(len(r.Parts) == 1))
	}
	b.reportOnce(f, r.Parts[0])
	return nil
}

// elsewhere says where a name that means nothing here is known.
func (b *builder) elsewhere(name string) string {
	if g := b.guards[name]; g != nil {
		return g.kind() + " of that name can only stand after `when`"
	}
	for _, p := range b.Pieces {
		if p.Edge(name) != nil {
			return "`" + p.ID + "." + name + "` is an edge; write it with its piece"
		}
		if p.Mark(name) != nil {
			return "`" + name + "` is a mark of " + p.ID + "; write " + p.ID + "." + name
		}
	}
	if b.steps[name] != nil {
		return "a step has that name, and a step is only referred to in text: {step " + name + "}"
	}
	return ""
}

func (g *guardName) kind() string {
	switch {
	case g.view != nil:
		return "a view"
	case g.option != nil:
		return "an option"
	}
	return "a choice"
}

func markNear(name string, near []*Target) *Mark {
	for _, t := range near {
		for _, p := range t.pieces() {
			if m := p.Mark(name); m != nil {
				return m
			}
		}
	}
	return nil
}

// pieces lists the pieces that a target touches.
func (t *Target) pieces() (all []*Piece) {
	seen := map[*Piece]bool{}
	add := func(p *Piece) {
		if p != nil && !seen[p] {
			seen[p] = true
			all = append(all, p)
		}
	}
	t.each(func(x *Target) {
		add(x.Piece)
		if x.Seam != nil {
			for _, u := range x.Seam.Uses() {
				add(u.Instance.Piece)
			}
		}
		for _, i := range x.Instances {
			add(i.Piece)
		}
	})
	return
}

// point resolves the end of a stretch: a mark, or an edge that meets there.
func (b *builder) point(r *dsl.Ref, near []*Target) *Target {
	if len(r.Parts) == 1 {
		for _, t := range near {
			for _, p := range t.pieces() {
				if e := p.Edge(r.Parts[0]); e != nil {
					e.Used = true
					return &Target{Kind: ToEdge, Path: r.Parts[0], Span: dsl.SpanOf(r.Tokens), Cond: e.Cond, Piece: p, Edge: e}
				}
			}
		}
	}
	return b.resolve(r, near)
}

// pieceTarget follows the words after a piece: a side, a copy, a material, and
// at the end an edge or a mark.
func (b *builder) pieceTarget(t *Target, p *Piece, rest []string) *Target {
	if p.doubt {
		return b.trusted(t, p, rest)
	}
	t.Kind, t.Piece = ToPiece, p
	pick := selection{all: p.Instances()}
	for i, w := range rest {
		last := i == len(rest)-1
		switch {
		case w == "left" || w == "right":
			t.Side = sideNamed(w)
			if !pick.side(t.Side, p) {
				b.aboutPiece(p, noSides(t.Span, p, w))
				return nil
			}
		case !(last && p.Edge(w) != nil && pick.allAre(w)) && (pick.copy(w) || pick.material(w)):
		case last && p.Edge(w) != nil:
			t.Kind, t.Edge = ToEdge, p.Edge(w)
			t.Edge.Used = true
		case last && p.Mark(w) != nil:
			t.Kind, t.Mark = ToMark, p.Mark(w)
			t.Mark.Used = true
		case !last && len(p.Instances()) == 0:
			// a copy or material of a piece that is never cut, which is reported
		default:
			f := noSuchPart(t.Span, t.Path, p.Name, w, b.partsOf(p))
			b.reportOnce(b.spelt(f, t.partAt(i+1), w, b.partsOf(p)), p.ID+"."+w)
			return nil
		}
	}
	t.Instances = pick.done()
	t.Cond = b.presence(p, t.Instances, pick.narrowed)
	if t.Edge != nil {
		t.Cond = b.Space.And(t.Cond, t.Edge.Cond)
		t.Uses = b.edgeUses(t)
	}
	if t.Mark != nil {
		t.Cond = b.Space.And(t.Cond, t.Mark.Cond)
	}
	return t
}

// presence says where a reference to a piece holds: where its piece does, and if
// a material or a copy was named, where that is cut.
func (b *builder) presence(p *Piece, list []*Instance, named bool) condition.Cond {
	if !named {
		return p.Cond
	}
	c := condition.False
	for _, i := range list {
		c = b.Space.Or(c, i.Cond)
	}
	return c
}

// edgeUses gives the uses of an edge for the instances of a target. An edge of a
// part cut on the fold is there twice, unless it runs across the fold.
func (b *builder) edgeUses(t *Target) (all []*EdgeUse) {
	for _, i := range t.Instances {
		if t.Edge.Doubled(i.Cut) {
			for _, s := range []Side{Left, Right} {
				if t.Side == Neither || t.Side == s {
					all = append(all, b.use(i, t.Edge, s))
				}
			}
			continue
		}
		all = append(all, b.use(i, t.Edge, i.Side))
	}
	return
}

// Doubled reports whether a cut gives the edge twice, once on each side of the
// fold: it does unless the edge is the fold or runs up to it.
func (e *Edge) Doubled(c *Cut) bool {
	f := c.Lay.FoldEdge
	if !c.Lay.Fold || f == nil || f == e {
		return false
	}
	n := len(e.Piece.Edges)
	gap := (e.Index - f.Index + n) % n
	return gap != 1 && gap != n-1
}

func (b *builder) use(i *Instance, e *Edge, s Side) *EdgeUse {
	k := useKey{i, e, s}
	if b.uses[k] == nil {
		b.uses[k] = &EdgeUse{i, e, s, b.Space.And(i.Cond, e.Cond)}
	}
	return b.uses[k]
}

// selection narrows the instances of a piece word by word.
type selection struct {
	all      []*Instance
	narrowed bool // a material or a copy was named
	cloth    bool
}

func (s *selection) keep(want func(*Instance) bool) bool {
	var kept []*Instance
	for _, i := range s.all {
		if want(i) {
			kept = append(kept, i)
		}
	}
	if len(kept) == 0 {
		return false
	}
	s.all = kept
	return true
}

// side narrows to one side; a part cut on the fold has both.
func (s *selection) side(side Side, p *Piece) bool {
	folded := false
	for _, i := range s.all {
		folded = folded || i.Cut.Lay.Fold
	}
	return s.keep(func(i *Instance) bool { return i.Side == side || i.Side == Neither && i.Cut.Lay.Fold }) || folded
}

// allAre reports whether a name of a copy or a material tells nothing apart, since all
// cloth in question has it: where an edge is called so too, the edge is meant.
func (s *selection) allAre(name string) bool {
	for _, i := range s.all {
		if i.Cloth() && i.Copy != name && i.Cut.Material.ID != name {
			return false
		}
	}
	return true
}

func (s *selection) copy(name string) bool {
	ok := s.keep(func(i *Instance) bool { return i.Copy == name })
	s.narrowed = s.narrowed || ok
	return ok
}

func (s *selection) material(name string) bool {
	ok := s.keep(func(i *Instance) bool { return i.Cut.Material.ID == name })
	s.narrowed = s.narrowed || ok
	s.cloth = s.cloth || ok
	return ok
}

// done leaves interfacing out unless it was asked for, or is all there is.
func (s *selection) done() []*Instance {
	if !s.cloth {
		s.keep((*Instance).Cloth)
	}
	return s.all
}

func (b *builder) partsOf(p *Piece) (all []string) {
	for _, e := range p.Edges {
		all = append(all, e.ID)
	}
	for _, m := range append(append([]*Mark(nil), p.Marks...), p.FoldLines...) {
		all = append(all, m.ID)
	}
	for _, i := range p.Instances() {
		all = append(all, i.Copy, i.Cut.Material.ID, i.Side.String())
	}
	return
}

func sideNamed(w string) Side {
	switch w {
	case "left":
		return Left
	case "right":
		return Right
	}
	return Neither
}

func (b *builder) seamTarget(t *Target, s *Seam, rest []string) *Target {
	t.Kind, t.Seam, t.Cond = ToSeam, s, s.Cond
	for _, w := range rest {
		switch {
		case sideNamed(w) != Neither:
			t.Side = sideNamed(w)
		case s.isIn(w):
			t.In, t.Cond = w, b.lineIn(s, w)
		default:
			b.reportOnce(noSuchPart(t.Span, t.Path, "the "+s.Called(), w, s.partsNamed()), s.ID+"."+w)
			return nil
		}
	}
	return t
}

// isIn reports whether a seam has lines in a cloth, or in copies of a name.
func (s *Seam) isIn(name string) bool {
	return slices.ContainsFunc(s.Copies, func(j *Join) bool { return j.In == name })
}

// partsNamed lists what may stand after the name of a seam.
func (s *Seam) partsNamed() (all []string) {
	for _, j := range s.Copies {
		all = append(all, j.In, j.Side.String())
	}
	return
}

// lineIn is where the lines of a seam in one cloth are there.
func (b *builder) lineIn(s *Seam, name string) condition.Cond {
	c := condition.False
	for _, j := range s.Copies {
		if j.In == name {
			c = b.Space.Or(c, j.Cond)
		}
	}
	return b.Space.And(s.Cond, c)
}

func (b *builder) notionTarget(t *Target, n *Notion, rest []string) *Target {
	t.Kind, t.Notion, t.Cond = ToNotion, n, n.Cond
	for _, w := range rest {
		ok := false
		for _, p := range n.Parts {
			ok = ok || p == w
		}
		if !ok {
			b.reportOnce(noSuchPart(t.Span, t.Path, n.Name, w, n.Parts), n.ID+"."+w)
			return nil
		}
		t.NotionBit = w
	}
	return t
}

func (b *builder) partTarget(t *Target, p *Part, rest []string) *Target {
	t.Kind, t.Part, t.Cond = ToPart, p, p.Cond
	for _, x := range p.Of {
		t.Instances = append(t.Instances, x.Instances...)
	}
	if len(rest) == 0 {
		return t
	}
	for _, e := range p.Edges {
		if e.ID != rest[len(rest)-1] {
			continue
		}
		e.Used = true
		t.Kind, t.PartEdge, t.Cond = ToPartEdge, e, b.Space.And(t.Cond, e.Cond)
		if len(rest) == 2 {
			t.Side = sideNamed(rest[0])
		}
		for _, o := range e.Of {
			for _, u := range o.Uses {
				if t.Side == Neither || u.Side == t.Side || u.Side == Neither {
					t.Uses = append(t.Uses, u)
				}
			}
		}
		return t
	}
	if s := sideNamed(rest[0]); s != Neither && len(rest) == 1 {
		t.Side = s
		return t
	}
	b.reportOnce(noSuchPart(t.Span, t.Path, p.Name, rest[0], ids(p.Edges, func(e *PartEdge) string { return e.ID })), p.ID+"."+rest[0])
	return nil
}

func (b *builder) stripTarget(t *Target, s *Strip, rest []string) *Target {
	t.Cond = s.Cond
	for _, bit := range s.Bits {
		bit.Used = bit.Used || len(rest) == 0
		if len(rest) == 1 && bit.ID == rest[0] {
			bit.Used = true
			t.Kind, t.Bit = ToBit, bit
			return t
		}
	}
	if len(rest) > 0 {
		b.reportOnce(noSuchPart(t.Span, t.Path, s.Name, rest[0], ids(s.Bits, func(x *Bit) string { return x.ID })), s.ID+"."+rest[0])
		return nil
	}
	t.Kind, t.Bit = ToBit, &Bit{Decl: s.Decl, Strip: s, Count: s.Count}
	return t
}

// reportOnce reports a name that means nothing the first time, and afterwards
// adds its place to that report: one slip in a declaration is met wherever the
// name is used.
func (b *builder) reportOnce(f finding.Finding, what string) {
	k := f.Rule + what
	if i, ok := b.once[k]; ok {
		old := &b.Findings[i]
		old.Edits = nil // used more than once, it may be the declaration that is misspelt
		if len(old.Related) < 6 && old.Place.Span != f.Place.Span {
			*old = related(*old, f.Place.Span, "and here")
		}
		return
	}
	b.once[k] = len(b.Findings)
	b.report(f)
}
