package dsl

import (
	"fmt"
	"strings"

	"seamwarden/dsl/finding"
)

// Wording of what is wrong with a whole sentence; slip.go has the usual slips
// inside one.

func where(block string) string {
	if block == topBlock {
		return "at the top of a file"
	}
	return "in " + article(block)
}

func article(block string) string {
	switch {
	case block == unknownBlock:
		return "this block"
	case block == "on":
		return "an `on … only` block"
	case strings.ContainsAny(block[:1], "aeiou"):
		return "an `" + block + "` block"
	}
	return "a `" + block + "` block"
}

// otherWords gives the language's word for the first word that people try.
var otherWords = map[string]string{
	"title": "pattern", "name": "pattern", "author": "maker", "designer": "maker", "version": "edition", "description": "about", "summary": "about", "ages": "for", "age": "for", "wearer": "for", "type": "kind", "garment": "kind",
	"allowance": "allow", "seam-allowance": "allow", "material": "fabric", "cloth": "fabric", "shell": "fabric", "fusible": "interfacing",
	"zip": "notion", "zipper": "notion", "buttons": "notion", "ribbon": "tape", "chapter": "section", "instruction": "step", "instructions": "section",
	"import": "include", "warning": "caution", "image": "figure", "picture": "figure", "drawing": "figure", "illustration": "figure",
	"join": "seam", "joins": "seam", "width": "widths", "edge": "edges", "notches": "marks", "notch": "marks",
	"stitch-in-the-ditch": "ditch", "serge": "finish", "overlock": "finish", "zigzag": "finish", "iron": "press", "interface": "fuse", "understitching": "understitch",
}

// unknownSentence words a sentence whose first word says nothing in its block.
// mend is the word that it is read as all the same, "" for none.
func unknownSentence(block string, s *Sentence, file string) (f finding.Finding, mend string) {
	if len(s.Head) == 0 {
		return syntax("sentence-unknown", s.opening().Span(file), "", "This block has no words before its brace.", "Say what it is: step \"Sew the sides\" { … }."), ""
	}
	t := s.Head[0]
	if t.Kind != Word {
		return cannotBegin(block, s, file), ""
	}
	f = syntax("sentence-unknown", t.Span(file), "not known here", fmt.Sprintf("No sentence %s begins with `%s`.", where(block), shorten(t.Text)), "")
	known := func(w string) bool { return declared(block, w) != nil || operates(block) && verbs[w] != "" }
	if low := strings.ToLower(t.Text); known(low) {
		f.Headline = fmt.Sprintf("`%s` is written in small letters.", t.Text)
		f.Place.Label, f.Help = "read as "+low, "Write `"+low+"`."
		return sure(f, f.Place.Span, low), low
	}
	if other := otherWords[strings.ToLower(t.Text)]; known(other) {
		f.Place.Label, f.Help = "read as "+other, fmt.Sprintf("The word for this is `%s`.", other)
		return f, other
	}
	if near := finding.Nearest(t.Text, expected(block)); near != "" {
		f.Place.Label, f.Help = "read as "+near, fmt.Sprintf("Did you mean `%s`?", near)
		if finding.Sole(t.Text, expected(block)) == near {
			f = sure(f, f.Place.Span, near)
		}
		return f, near
	}
	f.Help = belongs(block, s)
	return f, ""
}

// cannotBegin words a sentence that begins with no word.
func cannotBegin(block string, s *Sentence, file string) finding.Finding {
	t := s.Head[0]
	f := syntax("sentence-unknown", t.Span(file), "a sentence begins with a word", fmt.Sprintf("A sentence %s cannot begin with %s.", where(block), shorten(t.Text)),
		"Does it belong to the line above? Then end that line with a comma.")
	switch {
	case t.Kind == Number && len(s.Head) > 1 && declared(block, s.Head[1].Text) != nil:
		f.Help = fmt.Sprintf("The word comes first: %s %s.", s.Head[1].Text, t.Text)
	case t.Kind == String && operates(block):
		f.Help = `Text in a step stands in triple quotes: """ on a line of its own, before and after it.`
	}
	return f
}

// belongs says where a word that is not known in a block has its place.
func belongs(block string, s *Sentence) string {
	w := s.First()
	switch {
	case w == "when" || w == "if":
		return "A guard stands at the end of the sentence that it limits: piece pocket 7 \"Pocket\" when pockets { … }."
	case w == "end":
		return "A block ends with a closing brace: }."
	case joins[w] && w != "on":
		return "Does this line belong to the one above? Then indent it further, or end the line above with a comma."
	case top[w] != nil && w != "step":
		return fmt.Sprintf("`%s` stands at the top of a file, outside all blocks.", w)
	case verbs[w] != "" && inPiece[w] == nil:
		return "An operation stands in a step: step \"Sew the sides\" { … }."
	}
	for _, place := range []string{"piece", "pattern", "fabric", "notion", "section", "step"} {
		if declared(place, w) != nil {
			return fmt.Sprintf("`%s` stands inside %s.", w, article(place))
		}
	}
	if operates(block) {
		return "A step holds operations (sew, press, finish, hem …), text in triple quotes, figures and cautions."
	}
	return ""
}

// overlong reports a sentence that is out of all measure.
func overlong(s *Sentence, file string) (finding.Finding, bool) {
	if len(s.Head)+len(s.Tail) > maxWords {
		return syntax("sentence-not-understood", s.opening().Span(file), "it begins here", fmt.Sprintf("This sentence has more than %d words.", maxWords), "Begin a new line for each sentence."), true
	}
	for _, words := range [][]Token{s.Head, s.Tail} {
		if at := tooDeep(words, "(", ")"); at >= 0 {
			return syntax("sentence-not-understood", words[at].Span(file), "", "There are too many brackets inside brackets.", "Two or three are enough for any guard."), true
		}
	}
	return finding.Finding{}, false
}

func cutBySemicolon(before, s *Sentence, file string) finding.Finding {
	return syntax("sentence-not-understood", s.Head[0].Span(file), "no sentence of its own", fmt.Sprintf("A semicolon ends the `%s` sentence before `%s`.", before.First(), s.First()),
		"The things of one list are parted by commas.")
}

func nameReserved(n *Name, file string) finding.Finding {
	return syntax("name-reserved", SpanOf(n.Tokens), "not free as a name", fmt.Sprintf("`%s` is a word of the language and cannot be a name.", n.Text), "Choose another name, or lengthen it with a hyphen.")
}

func tailSpan(s *Sentence, file string) finding.Span {
	return finding.Span{File: file, Start: s.Tail[0].Start, End: s.Tail[len(s.Tail)-1].End()}
}

func badTail(s *Sentence, file string) finding.Finding {
	f := syntax("sentence-not-understood", tailSpan(s, file), "no guard", "Only a guard can follow a closing brace.", "Write `when` and what it holds for, or begin a new line.")
	if s.Tail[0].Is("when") {
		f.Headline, f.Place.Label = "The guard after this closing brace cannot be read.", "cannot be read"
		f.Help = "It is written so: when pockets; when A or B; when not (A or B); when band is bound."
	}
	return f
}

func noGuard(s *Sentence, file string) finding.Finding {
	return syntax("sentence-not-understood", tailSpan(s, file), "no place for a guard", fmt.Sprintf("A `%s` sentence takes no guard.", s.First()), "It holds for the whole pattern. Guard the sentences inside it.")
}

func twoGuards(s *Sentence, file string) finding.Finding {
	return syntax("sentence-not-understood", tailSpan(s, file), "second guard", fmt.Sprintf("This `%s` has two guards.", s.First()), "Join them with `and`, before the brace or after it.")
}

func noBody(s *Sentence, file string) finding.Finding {
	return syntax("sentence-not-understood", s.Open.Span(file), "no block here", fmt.Sprintf("A `%s` sentence has no block in braces.", s.First()), "Take the braces away.")
}

func wrongPhrase(verb string, p *Phrase) finding.Finding {
	var words strings.Builder
	for i, t := range p.Tokens {
		if i > 0 && t.Pos.Offset > p.Tokens[i-1].Pos.Offset+len(p.Tokens[i-1].Value) {
			words.WriteString(" ")
		}
		words.WriteString(t.Value)
	}
	said := shorten(words.String())
	return syntax("sentence-not-understood", SpanOf(p.Tokens), "does not go with "+verb, fmt.Sprintf("`%s` cannot be said with `%s`.", verb, said), "It is written so: "+form(verb))
}

func noCommaInTurning(p *Phrase) finding.Finding {
	return syntax("sentence-not-understood", SpanOf(p.Tokens), "the second turn?", fmt.Sprintf("A comma seems to be missing before %s.", p.Distance.Text), "It is written so: turning 1/4in, 3/4in")
}
