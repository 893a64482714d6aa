package dsl

import (
	"slices"
	"strings"

	"seamwarden/dsl/finding"
)

// acceptWord begins a comment that accepts a finding.
const acceptWord = "accept"

// Acceptances lists the comments that accept a finding, in their order:
//
//	// accept piece-never-used: a spare, for whoever tears the first
//
// A comment above a sentence, inside it, at its end, after its opening brace or
// before its closing one holds for the sentence and its block. One after the last
// sentence of a file holds for nothing. Names of findings have a hyphen, so that a
// remark such as "accept this: …" is no acceptance.
func Acceptances(f *File) []finding.Acceptance {
	var all []finding.Acceptance
	take := func(comments []Token, covers finding.Span) {
		for _, c := range comments {
			if a, ok := acceptance(c, f.Name); ok {
				a.Covers = covers
				all = append(all, a)
			}
		}
	}
	var walk func([]*Sentence)
	walk = func(sentences []*Sentence) {
		for _, s := range sentences {
			take(s.comments(), s.whole(f.Name))
			walk(s.Body)
		}
	}
	walk(f.Sentences)
	take(f.End, finding.Span{File: f.Name})
	slices.SortFunc(all, func(a, b finding.Acceptance) int { return a.At.Start.Offset - b.At.Start.Offset })
	return all
}

// whole covers a sentence with its block and what follows the block.
func (s *Sentence) whole(file string) finding.Span {
	end := s.opening().End()
	if len(s.Head) > 0 {
		end = s.Head[len(s.Head)-1].End()
	}
	if s.HasBody {
		end = s.Close.End()
	}
	if len(s.Tail) > 0 {
		end = s.Tail[len(s.Tail)-1].End()
	}
	return finding.Span{File: file, Start: s.opening().Start, End: end}
}

// acceptance reads a comment that may accept a finding. Without a colon the name
// must stand alone, or it is taken for prose.
func acceptance(c Token, file string) (a finding.Acceptance, ok bool) {
	text, isLine := strings.CutPrefix(c.Text, "//")
	if !isLine {
		return a, false
	}
	text = strings.TrimLeft(text, " \t")
	if len(text) < len(acceptWord) || !strings.EqualFold(text[:len(acceptWord)], acceptWord) {
		return a, false
	}
	rest := text[len(acceptWord):]
	name, reason, _ := strings.Cut(rest, ":")
	name = strings.TrimSpace(name)
	if blankLen(rest) == 0 || !isRuleName(name) {
		return a, false
	}
	at := c.Start
	before := c.Text[:len(c.Text)-len(rest)+strings.Index(rest, name)]
	at.Offset, at.Column = at.Offset+len(before), at.Column+characters(before)
	end := at
	end.Offset, end.Column = end.Offset+len(name), end.Column+characters(name)
	return finding.Acceptance{Rule: strings.ToLower(name), Reason: strings.TrimSpace(reason),
		At: c.Span(file), RuleAt: finding.Span{File: file, Start: at, End: end}}, true
}

// isRuleName reports whether a word can name a finding: plain letters, digits and
// a hyphen at least.
func isRuleName(word string) bool {
	for i := range len(word) {
		if !plainInWord[word[i]] || word[i] == '_' {
			return false
		}
	}
	return strings.Contains(strings.Trim(word, "-"), "-")
}
