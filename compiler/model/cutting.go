package model

import (
	"seamwarden/compiler/condition"
	"seamwarden/dsl"
	"seamwarden/dsl/finding"
)

// pieces reads the pattern pieces and what they are cut from.
func (b *builder) pieces(s Source) {
	switch n := s.Node.(type) {
	case *dsl.Strip:
		b.strip(n)
		if t, ok := b.names[n.ID.Text].(*Strip); ok {
			b.inside(s, func(i Source) { b.wornAt(i, Wearing{What: &t.Decl, Thing: t, Word: "strip"}) })
		}
	case *dsl.Piece:
		p := &Piece{Decl: b.decl(n.ID, n.Label, n), Number: b.count(n.Number)}
		if n.Number != nil {
			p.NumberSpan = dsl.SpanOf(n.Number.Tokens)
		}
		if !b.name(&p.Decl, p, "piece") {
			return
		}
		b.Pieces = append(b.Pieces, p)
		b.within(p.Cond, func() {
			b.inside(s, func(i Source) { b.shape(p, i) })
			b.inside(s, func(i Source) { b.cutting(p, i) })
			p.doubtful(unreadable(s))
		})
	}
}

// shape reads what a piece looks like; its cut lines come after that.
func (b *builder) shape(p *Piece, s Source) {
	switch n := s.Node.(type) {
	case *dsl.Edges:
		b.edges(p, n)
	case *dsl.FoldLine:
		p.FoldLines = append(p.FoldLines, &Mark{Decl: b.decl(n.ID, nil, n), Piece: p, Count: 1})
	case *dsl.Drawn:
		p.DrawnSaid, p.DrawnLeft = true, n.As == "left"
	case *dsl.Wear:
		b.wearing(n, Wearing{What: &p.Decl, Thing: p, Word: "piece"})
	case *dsl.Worn:
		p.WornIn = n.Face == "in"
	case *dsl.Trait:
		switch n.Word {
		case "symmetric":
			p.Symmetric = true
		case "template":
			p.Template = true
		case "separate":
			p.Separate = true
		}
	case *dsl.Outline:
		p.Outlines = append(p.Outlines, &Drawn{File: text(n.File), Cond: b.guard(n)})
	case *dsl.CutAt:
		b.unchecked("the line at which "+p.Name+" is cut", s.Span(s.File))
	case *dsl.SameShape:
		b.later = append(b.later, func() { p.SameAs, p.Flipped = b.resolve(n.As, nil), n.Flipped })
	case *dsl.Shaping:
		b.later = append(b.later, func() { b.shaping(n) })
	case *dsl.Text:
		b.noteInto(&p.Notes)(s)
	}
}

func (b *builder) edges(p *Piece, n *dsl.Edges) {
	for _, e := range n.Of {
		d := b.decl(e.ID, nil, e)
		if e.Mark {
			m := &Mark{Decl: d, Piece: p, Count: 1, Between: true}
			if len(p.Edges) > 0 {
				m.On = p.Edges[len(p.Edges)-1]
				m.On.Dividing = append(m.On.Dividing, m)
			}
			p.Marks = append(p.Marks, m)
			continue
		}
		if old := p.Edge(d.ID); old != nil {
			b.report(declaredTwice("edge of "+p.Name, &d, &old.Decl))
			continue
		}
		p.Edges = append(p.Edges, &Edge{Decl: d, Piece: p, Index: len(p.Edges)})
	}
}

// cutting reads the lines that need the edges: cuts, marks on edges, edges left
// as they are.
func (b *builder) cutting(p *Piece, s Source) {
	switch n := s.Node.(type) {
	case *dsl.Cut:
		b.cut(p, n, s)
	case *dsl.Marks:
		b.marks(p, n)
	case *dsl.Left:
		for _, name := range n.Edges {
			if e := b.edgeNamed(p, name); e != nil {
				e.LeftRaw = b.Space.Or(e.LeftRaw, b.guard(n))
			}
		}
	}
}

func (b *builder) edgeNamed(p *Piece, n *dsl.Name) *Edge {
	if e := p.Edge(n.Text); e != nil {
		return e
	}
	b.report(b.spelt(unknownEdge(dsl.SpanOf(n.Tokens), n.Text, p), dsl.SpanOf(n.Tokens), n.Text, ids(p.Edges, func(e *Edge) string { return e.ID })))
	return nil
}

func (b *builder) marks(p *Piece, n *dsl.Marks) {
	for _, m := range n.Of {
		d := b.decl(m.ID, nil, n)
		if old := p.Mark(d.ID); old != nil {
			b.report(declaredTwice("mark of "+p.Name, &d, &old.Decl))
			continue
		}
		x := &Mark{Decl: d, Piece: p, Count: max(1, b.count(m.Count)), Said: m.Count != nil}
		if m.On != nil {
			x.On = b.edgeNamed(p, &dsl.Name{Tokens: m.On.Tokens, Text: m.On.Parts[0]})
		}
		p.Marks = append(p.Marks, x)
	}
}

func (b *builder) cut(p *Piece, n *dsl.Cut, s Source) {
	c := &Cut{Piece: p, Count: b.count(n.Count), CountSpan: dsl.SpanOf(n.Count.Tokens), UpSpan: gluePlace(s), Span: s.Span(s.File)}
	if c.Material = b.materialNamed(n.Material); c.Material == nil || c.Count == 0 {
		p.doubtful(true)
		return
	}
	c.Cond = b.Space.And(b.guard(n), c.Material.Cond)
	c.Lay = b.lay(p, n.Lay)
	for _, l := range n.Lay {
		c.Glue = c.Glue || l.Glue != ""
	}
	p.Cuts = append(p.Cuts, c)
	b.layFits(c)
	b.instances(c)
}

// gluePlace gives the place of the last word of `glue side up` in a cut line.
func gluePlace(s Source) (at finding.Span) {
	for n := 2; n < len(s.Head); n++ {
		if s.Head[n-2].Is("glue") && s.Head[n-1].Is("side") {
			at = s.Head[n].Span(s.File)
		}
	}
	return
}

func (b *builder) lay(p *Piece, words []*dsl.Lay) (l Lay) {
	for _, w := range words {
		switch {
		case w.Mirrored:
			l.Mirrored = true
		case w.Alike:
			l.Alike = true
		case w.Fold:
			l.Fold = true
			if w.FoldEdge != nil && p != nil {
				l.FoldEdge = b.edgeNamed(p, w.FoldEdge)
				p.doubtful(l.FoldEdge == nil)
			}
		case w.Side == "right", w.Glue == "up":
			l.Up = FaceUp
		case w.Side == "wrong", w.Glue == "down":
			l.Up = FaceDown
		case w.Bias:
			l.Bias = true
		case w.Crossgrain:
			l.Crossgrain = true
		case len(w.As) > 0:
			for _, n := range w.As {
				l.Names = append(l.Names, n.Text)
			}
		}
	}
	return
}

// layFits reports a cut line that contradicts itself.
func (b *builder) layFits(c *Cut) {
	l := &c.Lay
	switch {
	case l.Mirrored && l.Fold:
		b.report(foldAndMirrored(c))
		l.Mirrored = false
		c.Piece.doubtful(true)
	case l.Mirrored && c.Count%2 != 0:
		b.report(oddMirrored(c))
	case l.Mirrored && l.Alike:
		b.report(mirroredAndAlike(c))
		l.Alike = false
	case l.Mirrored && l.Up != NotSaid:
		b.report(mirroredOneSideUp(c))
	}
	if want := max(1, len(l.Names)); len(l.Names) > 0 {
		if l.Mirrored || c.pairUnsaid() && c.Count == 2*want {
			want *= 2
		}
		if want != c.Count {
			b.report(namesAndCount(c, want))
		}
	} else if l.Mirrored && c.Count > 2 && c.Count%2 == 0 {
		b.report(pairsWithoutNames(c))
		c.Piece.doubtful(true)
	}
	if c.Glue && !c.Material.Interfacing {
		b.report(glueOnCloth(c))
	}
}

// pairUnsaid reports that several are cut, and not how they lie. That is reported;
// until it is mended they are taken for pairs, which they mostly are.
func (c *Cut) pairUnsaid() bool {
	l := c.Lay
	return c.Count > 1 && !c.Piece.Symmetric && !c.Piece.Template && !l.Mirrored && !l.Fold && !l.Alike && l.Up == NotSaid && !c.Material.NoRightSide
}

// instances makes the cut parts of a cut line.
func (b *builder) instances(c *Cut) {
	names := c.Lay.Names
	if len(names) == 0 {
		names = []string{""}
	}
	add := func(name string, side Side) {
		b.instID++
		i := &Instance{ID: b.instID, Piece: c.Piece, Cut: c, Copy: name, Side: side, Cond: c.Cond}
		i.Hand = hand(i)
		c.Instances = append(c.Instances, i)
	}
	switch {
	case c.Lay.Mirrored, c.pairUnsaid() && c.Count == 2*len(names):
		for _, n := range names {
			add(n, Left)
			add(n, Right)
		}
	case len(c.Lay.Names) > 0:
		for _, n := range names {
			add(n, Neither)
		}
	default:
		for range min(c.Count, 200) {
			add("", Neither)
		}
	}
	if c.Lay.Fold && c.Lay.FoldEdge != nil {
		c.Lay.FoldEdge.Fold = append(c.Lay.FoldEdge.Fold, c.Cond)
	}
}

// hand gives the hand of a cut part. Of a mirrored pair one is +, one -: worn
// side = drawn side · hand · (+ if its face looks out, - if in).
func hand(i *Instance) int8 {
	p, l := i.Piece, i.Cut.Lay
	switch {
	case p.Symmetric || l.Fold:
		return 0
	case i.Side != Neither:
		h := int8(1)
		if (i.Side == Left) != p.DrawnLeft {
			h = -h
		}
		if p.WornIn {
			h = -h
		}
		return h
	}
	return int8(l.Up)
}

// Settle notes which side is up where the cut line leaves it open.
func (c *Cut) Settle(up Face) {
	c.Lay.Up, c.Deduced = up, true
	c.Glue = c.Material.Fusible
	for _, i := range c.Instances {
		i.Hand = hand(i)
	}
}

// SettleInterfacing settles the side of interfacing that is cut once for a piece whose
// cloth is cut once with a side up: only one reading fits, glue against the wrong
// side of the cloth.
func (p *Pattern) SettleInterfacing() (settled bool) {
	for _, x := range p.Pieces {
		if x.Symmetric {
			continue
		}
		for _, c := range x.Cuts {
			if !c.Material.Fusible || c.Lay.Up != NotSaid || c.Lay.Mirrored || c.Lay.Fold || c.Count != 1 {
				continue
			}
			if cloth := soleCloth(x, c, p.Space); cloth != nil && cloth.Lay.Up != NotSaid {
				c.Settle(cloth.Lay.Up)
				settled = true
			}
		}
	}
	return
}

// soleCloth finds the one cloth cut of a piece that is there wherever c is.
func soleCloth(p *Piece, c *Cut, space *condition.Space) (found *Cut) {
	for _, o := range p.Cuts {
		if o.Material.Interfacing || !space.Overlaps(o.Cond, c.Cond) {
			continue
		}
		if found != nil || o.Count != 1 {
			return nil
		}
		found = o
	}
	return
}
