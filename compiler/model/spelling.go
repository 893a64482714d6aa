package model

import (
	"slices"

	"seamwarden/dsl/finding"
)

// A misspelt name gets an edit where it can only mean one other: one of a kind
// that fits its place, and no other near it.

// spelt gives a finding about a name its edit, if there is one candidate alone. at
// is the place of the name; the zero Span gives none.
func (b *builder) spelt(f finding.Finding, at finding.Span, name string, candidates []string) finding.Finding {
	for lost := range b.lost { // it may have been meant as well, and what it names is not known
		candidates = append(candidates, lost)
	}
	right := finding.Sole(name, candidates)
	if right != "" && !b.lost[right] && at.Start.Line > 0 {
		f.Edits = []finding.Edit{{Span: at, New: right, Certain: true, Title: "Write " + right}}
	}
	return f
}

// partAt gives the place of one word of a path, the zero Span if the path does not
// stand in the source letter for letter.
func (t *Target) partAt(index int) finding.Span {
	if t.Span.End.Offset-t.Span.Start.Offset != len(t.Path) || t.Span.Start.Line != t.Span.End.Line {
		return finding.Span{}
	}
	at, parts := t.Span, splitPath(t.Path)
	before := len(join(parts[:index]))
	if index > 0 {
		before++ // the dot
	}
	at.Start.Offset += before
	at.Start.Column += len([]rune(t.Path[:before]))
	at.End.Offset = at.Start.Offset + len(parts[index])
	at.End.Column = at.Start.Column + len([]rune(parts[index]))
	return at
}

// fitting lists the names that can stand first in a path here: alone, or with more
// words behind them.
func (b *builder) fitting(alone bool) []string {
	return b.namesOf(func(x any) bool {
		for _, k := range leadsTo(x, alone) {
			if len(b.want) == 0 || slices.Contains(b.want, k) {
				return true
			}
		}
		return false
	})
}

// leadsTo gives the kinds of thing that a path beginning with a name can mean.
func leadsTo(x any, alone bool) []TargetKind {
	switch x.(type) {
	case *Piece:
		if alone {
			return []TargetKind{ToPiece}
		}
		return []TargetKind{ToPiece, ToEdge, ToMark}
	case *Part:
		if alone {
			return []TargetKind{ToPart}
		}
		return []TargetKind{ToPart, ToPartEdge}
	case *Seam:
		return []TargetKind{ToSeam}
	case *Notion:
		return []TargetKind{ToNotion}
	case *Strip, *Bit:
		return []TargetKind{ToBit}
	}
	if !alone {
		return nil // the others have no words behind them
	}
	switch x.(type) {
	case *Shaping:
		return []TargetKind{ToShaping}
	case *Material:
		return []TargetKind{ToMaterial}
	}
	return nil
}
