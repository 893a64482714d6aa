package model

import (
	"strings"

	"seamwarden/compiler/condition"
	"seamwarden/dsl"
	"seamwarden/dsl/finding"
)

// noteInto gives a reader that keeps blocks of prose in a list.
func (b *builder) noteInto(list *[]*Prose) func(Source) {
	return func(s Source) {
		if n, ok := s.Node.(*dsl.Text); ok {
			*list = append(*list, b.proseOf(n, s.File))
		}
	}
}

// proseOf reads a block of text; its braces are resolved when every name is
// known.
func (b *builder) proseOf(n *dsl.Text, file string) *Prose {
	p := &Prose{Span: dsl.SpanOf(n.Block.Tokens), Source: n.Block.Text, Cond: b.guard(n)}
	start := p.Span.Start
	var starts []int
	p.Text, starts = dsl.Dedent(n.Block.Text)
	p.Braces = braces(p.Text, func(at int) finding.Pos {
		line := strings.Count(p.Text[:at], "\n")
		offset := starts[line] + at - (strings.LastIndexByte(p.Text[:at], '\n') + 1)
		return advance(start, n.Block.Text, offset)
	}, file)
	b.Proses = append(b.Proses, p)
	return p
}

// quoted reads text in quotation marks as prose.
func (b *builder) quoted(l *dsl.Label, c condition.Cond) *Prose {
	if l == nil {
		return nil
	}
	t := text(l)
	p := &Prose{Text: t.Text, Source: l.Text, Span: t.Span, Cond: c}
	p.Braces = braces(t.Text, func(at int) finding.Pos { return advance(t.Span.Start, l.Text, at+1) }, t.Span.File)
	b.Proses = append(b.Proses, p)
	return p
}

// advance gives the position so many bytes into a text that begins at p.
func advance(p finding.Pos, s string, offset int) finding.Pos {
	offset = min(offset, len(s))
	before := s[:offset]
	if i := strings.LastIndexByte(before, '\n'); i >= 0 {
		return finding.Pos{Offset: p.Offset + offset, Line: p.Line + strings.Count(before, "\n"), Column: len([]rune(before[i+1:])) + 1}
	}
	return finding.Pos{Offset: p.Offset + offset, Line: p.Line, Column: p.Column + len([]rune(before))}
}

// braces finds the {…} of a text.
func braces(text string, pos func(int) finding.Pos, file string) (all []*Brace) {
	for i := 0; i < len(text); i++ {
		if text[i] == '\\' {
			i++
			continue
		}
		if text[i] != '{' {
			continue
		}
		end := strings.IndexAny(text[i+1:], "{}\n")
		stop, closed := i+1, false
		if end >= 0 && text[i+1+end] == '}' {
			stop, closed = i+1+end+1, true
		}
		br := &Brace{Start: i, End: stop, Span: finding.Span{File: file, Start: pos(i), End: pos(stop)}}
		if f := strings.Fields(text[i+1 : max(i+1, stop-1)]); closed && len(f) > 0 {
			br.Word, br.Args = f[0], f[1:]
		}
		all = append(all, br)
		i = stop - 1
	}
	return
}

// BraceWords are the values that text can fetch, with what follows each.
var BraceWords = map[string]string{
	"allow": "SEAM", "piece": "PIECE", "step": "STEP", "count": "NOTION", "name": "NAME", "finished": "ROW", "body": "ROW", "ease": "ROW",
	"sizes": "ROW", "takes": "DART", "wide": "OPENING", "edition": "", "length": "NOTION", "view": "VIEW", "number": "PIECE",
}

// resolveProse finds what every brace means.
func (b *builder) resolveProse() {
	for _, p := range b.Proses {
		for _, br := range p.Braces {
			b.brace(p, br)
		}
	}
}

func (b *builder) brace(p *Prose, br *Brace) {
	want, known := BraceWords[br.Word]
	switch {
	case br.Word == "":
		b.report(emptyBrace(br))
		return
	case !known:
		b.report(unknownBrace(br))
		br.Word = ""
		return
	case want != "" && len(br.Args) != 1, want == "" && len(br.Args) > 0:
		b.report(braceArgs(br, want))
		br.Word = ""
		return
	case want == "":
		return
	}
	arg := br.Args[0]
	switch want {
	case "STEP":
		b.braceStep(p, br, arg)
	case "ROW":
		b.braceRow(br, arg)
	case "VIEW":
		if g := b.guards[arg]; g == nil || g.view == nil {
			b.report(braceNothing(br, arg, ids(b.Views, func(v *View) string { return v.ID })))
			br.Word = ""
		}
	default:
		b.braceName(p, br, arg, want)
	}
}

func (b *builder) braceStep(p *Prose, br *Brace, arg string) {
	if br.Step = b.steps[arg]; br.Step == nil {
		var known []string
		for id := range b.steps {
			known = append(known, id)
		}
		b.report(braceNothing(br, arg, known))
		br.Word = ""
		return
	}
	b.mustBeThere(p, br, "the step "+br.Step.Title.Text, br.Step.Cond, br.Step.Span)
}

func (b *builder) braceRow(br *Brace, arg string) {
	br.Row = arg
	if b.Sizes == nil {
		b.report(noSizeTable(br.Span, arg))
	} else if len(b.Sizes.FindAll(arg)) == 0 {
		b.report(unknownSizeRow(br.Span, arg, b.rowKeys()))
	} else {
		return
	}
	br.Word = ""
}

// braceName resolves {piece back}, {allow side} and the like.
func (b *builder) braceName(p *Prose, br *Brace, arg, want string) {
	b.here = br.Span
	t := b.resolve(&dsl.Ref{Parts: splitPath(arg)}, nil)
	if t == nil {
		br.Word = ""
		return
	}
	t.Span = br.Span
	kinds := map[string][]TargetKind{"SEAM": {ToSeam}, "PIECE": {ToPiece}, "NOTION": {ToNotion, ToBit}, "DART": {ToShaping}, "OPENING": {ToGap}}
	if ok := kinds[want]; ok != nil && !has(ok, t.Kind) {
		b.report(braceKind(br, arg, want))
		br.Word = ""
		return
	}
	if !fetches(br.Word, t) {
		b.report(noValue(br, t))
		br.Word = ""
		return
	}
	br.Target = t
	b.mustBeThere(p, br, t.describe(), t.Cond, t.span())
}

// fetches reports whether there is a value to fetch.
func fetches(word string, t *Target) bool {
	switch word {
	case "length":
		return t.Notion != nil && (t.Notion.Length != nil || t.Notion.BySize != "" || len(t.Notion.Cuts) == 1) || t.Bit != nil && t.Bit.Length != nil
	case "takes":
		return t.Shaping.Takes != nil
	case "wide":
		return t.Gap.Wide != nil
	case "number":
		return t.Piece.Number > 0
	}
	return true
}

func has(list []TargetKind, k TargetKind) bool {
	for _, x := range list {
		if x == k {
			return true
		}
	}
	return false
}

// mustBeThere reports text that speaks of a thing in a garment without it.
func (b *builder) mustBeThere(p *Prose, br *Brace, what string, there condition.Cond, declared finding.Span) {
	if bad := b.Space.Diff(b.Space.And(p.Cond, b.Valid), there); bad != condition.False {
		f := absentInText(br, what, declared)
		b.Absences = append(b.Absences, Absence{f, bad})
	}
}

// notes reads what belongs to the booklet, and lists what is read and not yet
// decided.
func (b *builder) notes(s Source) {
	switch n := s.Node.(type) {
	case *dsl.Term:
		t := &Term{Word: text(n.Word)}
		switch {
		case n.Prose != nil:
			t.Body = b.proseOf(&dsl.Text{Block: n.Prose}, s.File)
		case n.Text != nil:
			t.Body = b.quoted(n.Text, condition.True)
		default:
			b.report(termWithoutText(t.Word))
			return
		}
		b.Terms = append(b.Terms, t)
	case *dsl.Caution:
		b.Cautions = append(b.Cautions, b.caution(n))
	case *dsl.Change:
		c := &Change{Edition: text(n.Edition), Body: b.quoted(n.Text, condition.True)}
		if n.Text == nil {
			b.inside(s, func(i Source) {
				if t, ok := i.Node.(*dsl.Text); ok {
					c.Body = b.proseOf(t, i.File)
				}
			})
		}
		if c.Body == nil {
			b.report(changeWithoutText(c.Edition))
			return
		}
		b.Changes = append(b.Changes, c)
	case *dsl.Method:
		b.unchecked("the method "+n.ID.Text, s.Span(s.File))
	case *dsl.UseMethod:
		b.unchecked("the method "+n.ID.Text, s.Span(s.File))
	}
}
