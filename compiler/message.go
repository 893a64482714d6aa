package compiler

import (
	"errors"
	"fmt"
	"io/fs"
	"strings"

	"seamwarden/dsl/finding"
)

func trouble(rule string, at finding.Span, headline, help string) finding.Finding {
	return finding.Finding{Rule: rule, Severity: finding.Error, Headline: headline, Place: finding.Place{Span: at}, Help: help}
}

func emptyFile(name string) finding.Finding {
	return trouble("file-unreadable", finding.Span{File: name}, fmt.Sprintf("The file %s says nothing.", name), `A pattern begins so: pattern "Title" { … }. An empty file need not be included.`)
}

func includeCycle(at finding.Span, chain []string) finding.Finding {
	return trouble("include-in-a-circle", at, "This file includes itself: "+strings.Join(chain, " → ")+".", "Take one of these includes out.")
}

func includedTwice(at finding.Span, name string) finding.Finding {
	return trouble("include-twice", at, fmt.Sprintf("The file %s is included twice.", name), "Include it once; everything in it is known in the whole pattern.")
}

func includeOther(at finding.Span, name string) finding.Finding {
	return trouble("file-unreadable", at, fmt.Sprintf("%s is no pattern source.", name), "Files that are included end in .seam.")
}

func outside(at finding.Span, name string) finding.Finding {
	return trouble("file-outside-the-folder", at, fmt.Sprintf("%q lies outside the pattern's folder.", name), "Copy the file into the pattern's folder and name it from there, as in \"figures/front.svg\".")
}

func clothWithoutSizes(at finding.Span, name string) finding.Finding {
	return trouble("file-unreadable", at, fmt.Sprintf("The amounts in %s go by size, and this pattern has no sizes.", name), "Tell the amount here: needs 2m of main, width 150cm. Or name a table of sizes in the head.")
}

func notSVG(at finding.Span, name string) finding.Finding {
	return trouble("figure-unreadable", at, fmt.Sprintf("%s is no SVG drawing.", name), "Figures are line art in SVG, so that they print sharp at any size.")
}

func cannotOpen(at finding.Span, name, what string, err error) finding.Finding {
	help := ""
	rule := "file-unreadable"
	switch {
	case errors.Is(err, fs.ErrNotExist):
		help = "Is the name spelt as it is in the folder? Small and capital letters count."
	case strings.Contains(err.Error(), "escapes"):
		return outside(at, name)
	}
	return trouble(rule, at, fmt.Sprintf("The %s %s cannot be opened: %s.", what, name, plain(err)), help)
}

// plain takes the names of system calls out of an error.
func plain(err error) error {
	var pe *fs.PathError
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return errors.New("there is no such file")
	case errors.Is(err, fs.ErrPermission):
		return errors.New("it may not be read")
	case errors.As(err, &pe):
		return pe.Err
	}
	return err
}

// neverShown and neverIncluded stand at the head of the pattern, where a remark
// can accept them.
func neverShown(head finding.Span, names []string) finding.Finding {
	return finding.Finding{Rule: "figure-never-shown", Severity: finding.Advice, Place: finding.Place{Span: head},
		Headline: "Nothing shows " + spokenNames(names) + ", which lies among the figures.",
		Why:      "Drawings are made for a step: the step may have been lost, or the sentence that shows it.",
		Help:     "Show it where it belongs: figure \"" + names[0] + "\" \"…\"; or take the file away."}
}

func neverIncluded(head finding.Span, names []string) finding.Finding {
	return finding.Finding{Rule: "source-never-included", Severity: finding.Advice, Place: finding.Place{Span: head},
		Headline: "Nothing includes " + spokenNames(names) + ", which lies beside files of the pattern.",
		Why:      "What stands in it is not in the booklet, and is not checked.",
		Help:     "Include it: include \"" + names[0] + "\"; or take the file away."}
}

// spokenNames puts names of files into a sentence.
func spokenNames(names []string) string {
	if len(names) == 1 {
		return names[0]
	}
	last := len(names) - 1
	return strings.Join(names[:last], ", ") + " or " + names[last]
}
