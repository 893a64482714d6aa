package model

import (
	"seamwarden/compiler/condition"
	"seamwarden/dsl"
)

// parts reads made-up parts, before the seams that use their edges.
func (b *builder) parts(s Source) {
	switch n := s.Node.(type) {
	case *dsl.Make:
		p := &Part{Decl: b.decl(n.ID, n.Label, n)}
		p.Of = b.row(n.From, nil)
		for _, t := range p.Of {
			p.Cond = b.Space.And(p.Cond, t.Cond)
		}
		if !b.name(&p.Decl, p, "part") {
			return
		}
		b.Parts = append(b.Parts, p)
		b.within(p.Cond, func() { b.inside(s, func(i Source) { b.partEdge(p, i) }) })
	case *dsl.Overlap:
		o := &Overlap{Over: b.run(n.Over, nil), Span: s.Span(s.File), Cond: b.guard(n)}
		if o.Over != nil {
			o.Base = b.run(n.Base, []*Target{o.Over})
		}
		if o.Over != nil && o.Base != nil {
			o.Cond = b.Space.All(o.Cond, o.Over.Cond, o.Base.Cond)
			b.Overlaps = append(b.Overlaps, o)
			b.unchecked("what lies on what here", o.Span)
		}
	case *dsl.Shaping:
		b.shaping(n)
	}
}

// partEdge reads `attach = both attach`: the edge of that name of every piece of
// the part; without `both` the reference is one of its own.
func (b *builder) partEdge(p *Part, s Source) {
	n, ok := s.Node.(*dsl.MakeEdge)
	if !ok {
		return
	}
	e := &PartEdge{Decl: b.decl(n.ID, nil, n), Part: p}
	if !n.Both {
		e.Of = b.row(n.Of, nil)
		p.Edges = append(p.Edges, e)
		return
	}
	ref := n.Of.Runs[0].Alt[0]
	for _, of := range p.Of {
		path := &dsl.Ref{Tokens: ref.Tokens, Parts: append(splitPath(of.Path), ref.Parts...)}
		if t := b.resolve(path, nil); t != nil {
			e.Of = append(e.Of, t)
		}
	}
	p.Edges = append(p.Edges, e)
}

func (b *builder) shaping(n *dsl.Shaping) {
	x := &Shaping{Decl: b.decl(n.ID, nil, n), Kind: n.Kind, Takes: b.amount(n.Takes), Long: b.amount(n.Long)}
	if x.In = b.resolve(n.In, nil); x.In == nil {
		b.lost[x.ID] = true
		return
	}
	x.Cond = b.Space.And(x.Cond, x.In.Cond)
	if b.name(&x.Decl, x, n.Kind) {
		b.Shapings = append(b.Shapings, x)
	}
}

// edgesOnly is what a seam joins.
var edgesOnly = []TargetKind{ToEdge, ToPartEdge}

// seams reads a seam and works out which real edges it joins.
func (b *builder) seams(s Source) {
	n, ok := s.Node.(*dsl.Seam)
	if !ok {
		return
	}
	x := &Seam{Decl: b.decl(n.ID, n.Label, n), Allow: b.Pattern.Allow, Sentence: s.Span(s.File)}
	if !b.name(&x.Decl, x, "seam") {
		return
	}
	b.Seams = append(b.Seams, x)
	b.want = edgesOnly
	x.Joins, x.To = b.row(n.Joins, nil), b.row(n.To, nil)
	b.want = nil
	to := n.To
	if n.Itself {
		x.To, to = x.Joins, n.Joins
	}
	in := b.clauses(x, n)
	if len(x.Joins) < len(n.Joins.Runs) || len(x.To) < len(to.Runs) {
		return // a name in it means nothing; that is reported
	}
	if b.onlyEdges(x) {
		b.copies(x, in)
	}
	if len(x.Copies) == 0 {
		return // why is reported; the seam is there all the same
	}
	c := condition.False
	for _, j := range x.Copies {
		c = b.Space.Or(c, j.Cond)
	}
	x.Cond = b.Space.And(x.Cond, c)
	if x.Cond == condition.False && !b.deadTarget(x) {
		b.report(seamNowhere(x))
	}
}

func (b *builder) clauses(x *Seam, n *dsl.Seam) (in []string) {
	for _, c := range n.Clause {
		switch {
		case c.Allow != nil:
			x.Allow, x.Own = b.amount(c.Allow), true
			x.AllowTo = b.amount(c.AllowTo)
		case c.None:
			x.Allow, x.None, x.Own = nil, true, true
		case c.Ease != nil:
			x.Ease = b.amount(c.Ease)
		case c.Gathered:
			x.Gathered = true
		case len(c.In) > 0:
			for _, m := range c.In {
				in = append(in, m.Text)
			}
		default:
			b.catching(x, c.Catching)
		}
	}
	return
}

func (b *builder) catching(x *Seam, list []*dsl.Caught) {
	for _, c := range list {
		t := b.run(&dsl.Run{Alt: c.What}, nil)
		if t == nil {
			continue
		}
		k := &Caught{Target: t, Count: max(1, b.count(c.Count)), Said: c.Count != nil}
		if c.At != nil {
			k.At = b.point(c.At, append(append([]*Target(nil), x.Joins...), x.To...))
		}
		x.Catching = append(x.Catching, k)
	}
}

// onlyEdges reports what a seam cannot join.
func (b *builder) onlyEdges(x *Seam) bool {
	ok := true
	for _, t := range append(append([]*Target(nil), x.Joins...), x.To...) {
		t.each(func(a *Target) {
			if a.Kind != ToEdge && a.Kind != ToPartEdge {
				b.report(seamOfNoEdge(x, a))
				ok = false
			}
		})
	}
	return ok
}

// copies works out the real seam lines. Where every member of both rows is
// there on both sides, each side is a seam of its own.
func (b *builder) copies(x *Seam, in []string) {
	if len(in) > 0 {
		for _, m := range in {
			n := len(x.Copies)
			b.copiesOf(x, x.only(x.Joins, m), x.only(x.To, m))
			for _, j := range x.Copies[n:] {
				j.In = m
			}
		}
		return
	}
	b.copiesOf(x, x.Joins, x.To)
}

// only narrows targets to what is cut from a material, or is a copy of a name.
func (x *Seam) only(list []*Target, name string) (all []*Target) {
	for _, t := range list {
		c := *t
		c.Uses = nil
		for _, u := range t.Uses {
			if u.Instance.Cut.Material.ID == name || u.Instance.Copy == name {
				c.Uses = append(c.Uses, u)
			}
		}
		all = append(all, &c)
	}
	return
}

func (b *builder) copiesOf(x *Seam, from, to []*Target) {
	all := append(append([]*Target(nil), from...), to...)
	for _, t := range all {
		if len(t.Uses) == 0 {
			return // its piece is never cut, or it is not known how; that is reported
		}
	}
	if len(from) == 1 && len(to) == 1 && from[0].Path == to[0].Path {
		b.selfJoin(x, from[0])
		return
	}
	pairs, lefts, rights := 0, false, false
	for _, t := range all {
		l, r := onSide(t.Uses, Left), onSide(t.Uses, Right)
		if len(l) > 0 && len(r) > 0 {
			pairs++
		}
		lefts, rights = lefts || len(l) > 0 && len(r) == 0, rights || len(r) > 0 && len(l) == 0
		if len(l) > 0 && len(r) > 0 && len(onSide(t.Uses, Neither)) > 0 {
			b.aboutPiece(t.Piece, whichCopy(x, t))
			return
		}
	}
	switch {
	case pairs == len(all):
		b.join(x, Left, from, to)
		b.join(x, Right, from, to)
	case pairs == 0:
		b.join(x, Neither, from, to)
	case len(from) == 1 && len(to) == 1 && lefts != rights:
		side := Left
		if rights {
			side = Right
		}
		b.join(x, side, from, to)
	default:
		b.pairAndSingle(x, all)
	}
}

// pairAndSingle reports a pair that is joined to a single part. If there are only
// the two, the single one may be cut wrongly, and is reported once.
func (b *builder) pairAndSingle(x *Seam, all []*Target) {
	f := pairInRow(x, all)
	if len(all) == 2 {
		for _, t := range all {
			if t.Piece != nil && !(len(onSide(t.Uses, Left)) > 0 && len(onSide(t.Uses, Right)) > 0) {
				b.aboutPiece(t.Piece, singleForPair(f, t.Piece))
				return
			}
		}
	}
	b.report(f)
}

// selfJoin joins an edge to itself: the left one of a pair to the right one, or
// the two ends of one piece that becomes a tube.
func (b *builder) selfJoin(x *Seam, t *Target) {
	l, r := onSide(t.Uses, Left), onSide(t.Uses, Right)
	switch {
	case len(l) == 1 && len(r) == 1:
		c := b.Space.And(l[0].Cond, r[0].Cond)
		x.Copies = append(x.Copies, &Join{Seam: x, A: l, B: r, Cond: b.Space.And(x.Cond, c)})
	case len(t.Uses) == 1:
		x.Copies = append(x.Copies, &Join{Seam: x, A: t.Uses, B: t.Uses, Cond: b.Space.And(x.Cond, t.Uses[0].Cond)})
	default:
		b.aboutPiece(t.Piece, whichCopy(x, t))
	}
}

func onSide(uses []*EdgeUse, s Side) (all []*EdgeUse) {
	for _, u := range uses {
		if u.Side == s {
			all = append(all, u)
		}
	}
	return
}

// join adds one seam line: the uses on its side, in the order of the rows.
func (b *builder) join(x *Seam, side Side, from, to []*Target) {
	j := &Join{Seam: x, Side: side}
	ok := true
	j.A, ok = b.members(x, side, from)
	if ok {
		j.B, ok = b.members(x, side, to)
	}
	if !ok {
		return
	}
	j.Cond = b.Space.All(x.Cond, b.anyThere(from), b.anyThere(to))
	x.Copies = append(x.Copies, j)
}

func (b *builder) anyThere(list []*Target) condition.Cond {
	c := condition.False
	for _, t := range list {
		c = b.Space.Or(c, t.Cond)
	}
	return c
}

// members gives the uses of a row on one side. More than one use of the same
// target, there at the same time, means that a copy was not named.
func (b *builder) members(x *Seam, side Side, list []*Target) (all []*EdgeUse, ok bool) {
	for _, t := range list {
		uses := t.Uses
		if side != Neither {
			uses = append(onSide(t.Uses, side), onSide(t.Uses, Neither)...)
		}
		if several := b.several(t, side); several != nil {
			b.aboutPiece(several.Piece, whichCopy(x, several))
			return nil, false
		}
		all = append(all, uses...)
	}
	return all, true
}

// several gives the edge that means more than one part at once, among a target
// and its alternatives; nil if there is none.
func (b *builder) several(t *Target, side Side) (found *Target) {
	t.each(func(a *Target) {
		uses := a.Uses
		if side != Neither {
			uses = append(onSide(a.Uses, side), onSide(a.Uses, Neither)...)
		}
		if a.Kind == ToEdge && b.together(uses) {
			found = a
		}
	})
	return
}

func (b *builder) together(uses []*EdgeUse) bool {
	for i, u := range uses {
		for _, v := range uses[:i] {
			if b.Space.Overlaps(u.Cond, v.Cond) {
				return true
			}
		}
	}
	return false
}
