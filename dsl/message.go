package dsl

import (
	"bytes"
	"fmt"
	"strings"
	"unicode"
	"unicode/utf8"

	"seamwarden/dsl/finding"
)

// All wording of the reader stands in the files message*.go and slip.go, one
// constructor a mistake. Here: whole files, signs and braces.

func syntax(rule string, at finding.Span, label, headline, help string) finding.Finding {
	return finding.Finding{Rule: rule, Severity: finding.Error, Headline: headline, Place: finding.Place{Span: at, Label: label}, Help: help}
}

func tooLarge(name string, size int) finding.Finding {
	return syntax("file-unreadable", finding.Span{File: name}, "", fmt.Sprintf("The file %s has %.1f MB; a source file has at most %d MB.", name, float64(size)/(1<<20), MaxSize>>20),
		"Is it really pattern source? Divide a long pattern into files and include them.")
}

func tooManyWords(name string, at finding.Span) finding.Finding {
	return syntax("file-unreadable", at, "read up to here", fmt.Sprintf("The file %s has more than %d words; that is no pattern.", name, maxTokens), "Is it really pattern source? Divide a long pattern into files and include them.")
}

func notUTF8(name string, src []byte, at int) finding.Finding {
	line, start := 1, 0
	if bytes.HasPrefix(src, []byte(byteOrderMark)) {
		start = len(byteOrderMark)
	}
	for i, c := range src[:at] {
		if c == '\n' {
			line, start = line+1, i+1
		}
	}
	p := finding.Pos{Offset: at, Line: line, Column: utf8.RuneCount(src[start:at]) + 1}
	return syntax("file-unreadable", finding.Span{File: name, Start: p, End: p}, "",
		fmt.Sprintf("The file %s is not plain text in UTF-8: line %d has a byte that is no letter (0x%02X).", name, line, src[at]),
		"Save the file again as UTF-8 text.")
}

func notListed(n int, end finding.Span) finding.Finding {
	return syntax("mistakes-not-listed", end, "", fmt.Sprintf("%d more mistakes are not listed.", n), "Mend the first ones; many of the others may go with them.")
}

// What can be wrong with a token. The scanner writes these, badToken adds the rest.
const (
	strangeSign      = "This sign means nothing here."
	hashComment      = "A comment begins with //, not with #."
	hashNumber       = "A number is written without # before it."
	starComment      = "A comment begins with // and runs to the end of its line; /* and */ are not used."
	dashInName       = "A name takes the plain hyphen, not a longer dash."
	quoteOpen        = "The closing quotation mark is missing on this line."
	quoteShut        = "The opening quotation mark of this text is missing."
	quoteOverLines   = "A text in quotation marks ends on the line where it begins."
	apostropheQuotes = `Text stands in double quotation marks ("), not in apostrophes.`
	proseOpen        = `This block of text is never closed with """.`
	unitElse         = "The unit is written otherwise."
	runTogether      = "The number and the word after it run together."
)

// badToken words the fault of the token at a place.
func badToken(toks []Token, at int, file string) finding.Finding {
	t := toks[at]
	headline, label, help := t.Fault(), "", ""
	span := t.Span(file)
	switch t.Fault() {
	case strangeSign:
		if wholeAndFraction(toks, at) {
			return hyphenInNumber(toks[at-1], toks[at+1], file)
		}
		headline, label, help = strange(toks, at)
	case hashComment:
		span.End = finding.Pos{Offset: t.Start.Offset + 1, Line: t.Start.Line, Column: t.Start.Column + 1}
		label, help = "write // here", "Write: "+shorten("// "+strings.TrimLeft(t.Text, "# "))
	case starComment:
		label, help = "comment", "Begin each of its lines with //."
	case dashInName, apostropheQuotes, hashNumber:
		label, help = "read as "+shorten(t.Mend()), "Write "+shorten(t.Mend())+"."
	case quoteOpen:
		label, help = "opened here", `Text stands between two quotation marks on one line: "Over front".`
	case quoteShut:
		label, help = "closed here", `Text stands between two quotation marks on one line: "Over front".`
	case quoteOverLines:
		span.End = finding.Pos{Offset: t.Start.Offset + 1, Line: t.Start.Line, Column: t.Start.Column + 1}
		label, help = "opened here", `Write it on one line, or in triple quotes (""") where text of many lines may stand.`
	case proseOpen:
		span.End = finding.Pos{Offset: t.Start.Offset + 3, Line: t.Start.Line, Column: t.Start.Column + 3}
		label, help = "opened here", `Close it with """ on a line of its own.`
	case unitElse:
		headline = fmt.Sprintf("%s is written %s.", t.Text, t.Mend())
		label, help = "read as "+t.Mend(), "The units are in, yd, mm, cm and m, straight after the number."
	case runTogether:
		headline, label, help = noUnit(t)
	}
	f := syntax("sign-not-understood", span, label, headline, help)
	if t.Mend() != "" && t.Fault() != quoteOverLines { // that may lack its end as well
		f = sure(f, span, t.Mend())
	}
	return f
}

// noUnit words a number that is followed at once by something that is no unit.
func noUnit(t Token) (headline, label, help string) {
	n := numberLen(t.Text)
	number, word := t.Text[:n], t.Text[n:]
	switch strings.ToLower(word) {
	case "'", "′", "’", "ft", "foot", "feet":
		return t.Text + " would be feet, which are not used here.", "feet", "Write it in inches or yards."
	case "x":
		return t.Text + " runs a number and a word together.", "", "A count is a number alone: cut " + number + " main."
	}
	return t.Text + " runs a number and a word together.", "no unit", fmt.Sprintf("Write %s with a space, or a unit: in, yd, mm, cm or m.", number+" "+word)
}

// signs are the strange signs that people have a reason to write, with the way
// to write it here.
var signs = map[string]string{
	"&": "Write a comma between the things of a list, `and` in a guard.",
	"+": "Write a comma between the things of a list, `and` in a guard.",
	"|": "Write `or`.",
	"/": "A fraction has no spaces in it: 5/8in. A comment begins with //.",
	`\`: "A fraction is written with /: 5/8in. A comment begins with //.",
	"×": "Between the two measures of a strip stands the letter x: 2in x 26in.",
	"*": "Each sentence begins with its word, without a sign before it. A strip is 2in x 26in, with the letter x.",
	"•": "Each sentence begins with its word, without a sign before it.",
	"…": "Write out what the dots stand for.",
	"[": "A block stands in braces: { and }.",
	"]": "A block stands in braces: { and }.",
	"%": "Per cent follows its number at once: 3%.",
	"'": "An apostrophe belongs inside text in quotation marks.",
	"’": "An apostrophe belongs inside text in quotation marks.",
	"<": "Leave it out: what it stood round is written alone.",
	">": "Leave it out: what it stood round is written alone.",
	"!": "Leave it out, or put the text in quotation marks.",
	"?": "Leave it out, or put the text in quotation marks.",
}

// strange words a sign that belongs to no sentence.
func strange(toks []Token, at int) (headline, label, help string) {
	t := toks[at]
	r, _ := utf8.DecodeRuneInString(t.Text)
	help = signs[t.Text]
	switch {
	case unicode.Is(unicode.Cf, r):
		return fmt.Sprintf("A sign that cannot be seen (%U) stands here.", r), "", "Delete it. It often comes along when text is copied from another program."
	case r == '-' || isDash(r):
		return dash(toks, at)
	case help == "":
		help = "Delete it, or put it in quotation marks if it is text."
	}
	return fmt.Sprintf("The sign %s means nothing here.", shorten(t.Text)), "no part of a sentence", help
}

// dash words a hyphen or dash outside a name.
func dash(toks []Token, at int) (headline, label, help string) {
	t := toks[at]
	help = "A plain hyphen belongs inside a name, as in over-front. Delete this if it is not one."
	if at == 0 {
		help = "Each sentence begins with its word, without a dash before it."
	}
	return fmt.Sprintf("The dash %s means nothing here.", t.Text), "no part of a name", help
}

// wholeAndFraction reports whether a sign stands between the parts of a number,
// as in 1-1/2in.
func wholeAndFraction(toks []Token, at int) bool {
	if at == 0 || at+1 >= len(toks) || toks[at].Text != "-" && !isDash([]rune(toks[at].Text)[0]) {
		return false
	}
	before, after := toks[at-1], toks[at+1]
	return before.Kind == Number && (after.Kind == Measure || after.Kind == Number) && strings.Contains(after.Text, "/")
}

func hyphenInNumber(whole, fraction Token, file string) finding.Finding {
	right := whole.Text + " " + fraction.Meant()
	at := finding.Span{File: file, Start: whole.Start, End: fraction.End()}
	return sure(syntax("sign-not-understood", at, "no hyphen in a number", fmt.Sprintf("%s-%s is written %s.", whole.Text, fraction.Text, right),
		"One space stands before the fraction."), at, right)
}

// shorten keeps a text of the author's to the length of a line.
func shorten(s string) string {
	s, _, _ = strings.Cut(s, "\n")
	if r := []rune(s); len(r) > 60 {
		return string(r[:59]) + "…"
	}
	return s
}

func strayBrace(at finding.Span) finding.Finding {
	return syntax("brace-unmatched", at, "closes nothing", "This closing brace has no opening brace.",
		"Delete it, or look above it for a block that was closed twice.")
}

func noClosing(s *Sentence, file string) finding.Finding {
	f := syntax("brace-unmatched", s.Open.Span(file), "opened here", fmt.Sprintf("The block of %s is never closed.", title(s)), "Write } where it ends.")
	f.Related = []finding.Place{{Span: s.Close.Span(file), Label: "it seems to end before this"}}
	return f
}

func noOpening(s *Sentence, file string) finding.Finding {
	return syntax("brace-unmatched", s.Head[len(s.Head)-1].Span(file), "{ missing after this", fmt.Sprintf("The block of %s is never opened.", title(s)), "Write { at the end of this line.")
}

func deep(at finding.Span) finding.Finding {
	return syntax("brace-unmatched", at, "", "There are too many braces inside braces to make sense of this file.", "Close the blocks above it.")
}

// title names a sentence by its first words.
func title(s *Sentence) string {
	var words []string
	for i, t := range s.Head {
		if i == 2 || t.Kind == Prose {
			break
		}
		words = append(words, shorten(t.Text))
	}
	if len(words) == 0 {
		return "this brace"
	}
	return "`" + strings.Join(words, " ") + "`"
}
