package dsl

import "seamwarden/dsl/finding"

// ParseGuard reads the text of a guard that stands outside the source, as in a
// size table: "B and pockets". at is where the text begins. It gives nil and a
// finding if the text is no guard.
func ParseGuard(text string, at finding.Span) (*GuardOr, *finding.Finding) {
	toks := scan(text)
	toks = toks[:len(toks)-1]
	for i := range toks {
		toks[i].Start = shifted(toks[i].Start, at.Start)
	}
	if len(toks) == 0 || !toks[0].Is("when") {
		toks = append([]Token{{Kind: Word, Text: "when", Start: at.Start, put: true}}, toks...)
	}
	if node, err := kindTail.understand(&feed{file: at.File, toks: toks, end: at.End}); err == nil {
		if g := node.(*Guarded).Guard; g != nil {
			return g.Or, nil
		}
	}
	f := syntax("guard-not-understood", at, "", "This guard cannot be read: "+text, "Write it as after `when` in the source: B, or B and not pockets.")
	return nil, &f
}

func shifted(p, by finding.Pos) finding.Pos {
	return finding.Pos{Offset: p.Offset + by.Offset, Line: by.Line, Column: p.Column - 1 + by.Column}
}
