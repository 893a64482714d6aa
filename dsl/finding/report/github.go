package report

import (
	"bytes"
	"fmt"
	"io"
	"strings"

	"seamwarden/dsl/finding"
)

// shownAStep is how many annotations of each kind a workflow shows for a step: "10
// warning annotations and 10 error annotations per step" (GitHub's reference of
// check runs); its runner keeps 10 of each kind, notices too (_maxIssueCount in
// ExecutionContext.cs of actions/runner).
const shownAStep = 10

// GitHub writes findings as workflow commands, which a workflow shows beside the
// lines: errors, warnings, and advice as notices. What is more than a step shows
// stands as plain lines, so that the log has it; a notice at the end says how many
// they are, and how many things were not checked. What is accepted is left out.
func GitHub(w io.Writer, in Input) error {
	g := &github{left: map[string]int{"error": shownAStep, "warning": shownAStep, "notice": shownAStep - 1}, cut: map[string]int{}}
	for _, f := range in.Folders {
		if f.Failed != "" {
			g.annotate(annotation{kind: "error", title: "not read", text: []string{finding.OneLine(f.Failed)}})
		}
	}
	unchecked := 0
	for _, f := range in.Folders {
		unchecked += f.tally().Unchecked
		for _, x := range f.Findings {
			if x.Severity != finding.Unchecked {
				g.annotate(f.annotation(x))
			}
		}
	}
	if text := g.closing(unchecked); text != "" {
		g.command(annotation{kind: "notice", title: in.Tool.Name, text: []string{text}})
	}
	_, err := w.Write(g.out.Bytes())
	return err
}

type github struct {
	out       bytes.Buffer
	left, cut map[string]int // annotations by kind
}

// annotation is one workflow command; file is "" and line 0 where there is none.
type annotation struct {
	kind, title, file                string
	line, column, endLine, endColumn int
	text                             []string
}

func (f Folder) annotation(x finding.Finding) annotation {
	a := annotation{kind: [...]string{"error", "warning", "notice", ""}[x.Severity], title: x.Rule, text: paragraphs(x)}
	if x.Place.File != "" {
		start, end := x.Place.Start, endOf(x.Place.Span)
		a.file, a.line, a.column, a.endLine, a.endColumn = f.file(x.Place.File), start.Line, start.Column, end.Line, end.Column
	}
	for _, p := range related(x) {
		text := "See " + finding.OneLine(f.file(p.File))
		if p.Start.Line > 0 {
			text += fmt.Sprintf(":%d:%d", p.Start.Line, p.Start.Column)
		}
		if p.Label != "" {
			text += ": " + finding.OneLine(p.Label)
		}
		a.text = append(a.text, text)
	}
	return a
}

// annotate writes an annotation, or a plain line where no more are shown.
func (g *github) annotate(a annotation) {
	if g.left[a.kind] > 0 {
		g.left[a.kind]--
		g.command(a)
		return
	}
	g.cut[a.kind]++
	at := ""
	if a.file != "" {
		at = finding.OneLine(a.file) + ": "
		if a.line > 0 {
			at = fmt.Sprintf("%s:%d:%d: ", finding.OneLine(a.file), a.line, a.column)
		}
	}
	fmt.Fprintf(&g.out, "%s: %s%s [%s]\n", a.kind, harmless(at), harmless(a.text[0]), harmless(finding.OneLine(a.title)))
}

// command writes a workflow command. A column is given only on one line, since
// the runner drops it otherwise.
func (g *github) command(a annotation) {
	var properties []string
	add := func(name, value string) { properties = append(properties, name+"="+propertyValue(value)) }
	if a.file != "" {
		add("file", a.file)
	}
	if a.line > 0 {
		add("line", fmt.Sprint(a.line))
		if a.endLine == a.line {
			add("col", fmt.Sprint(a.column))
			add("endColumn", fmt.Sprint(a.endColumn))
		}
		add("endLine", fmt.Sprint(a.endLine))
	}
	add("title", a.title)
	fmt.Fprintf(&g.out, "::%s %s::%s\n", a.kind, strings.Join(properties, ","), commandData(strings.Join(a.text, "\n")))
}

// closing words what is not shown; "" if everything is.
func (g *github) closing(unchecked int) string {
	var parts []string
	for _, kind := range []struct{ key, one, many string }{
		{"error", "error", "errors"}, {"warning", "warning", "warnings"}, {"notice", "piece of advice", "pieces of advice"}} {
		if n := g.cut[kind.key]; n > 0 {
			parts = append(parts, count(n, kind.one, kind.many))
		}
	}
	var sentences []string
	if len(parts) > 0 {
		sentences = append(sentences, fmt.Sprintf("In the log only, since a step shows no more than %d of a kind beside the lines: %s.", shownAStep, strings.Join(parts, ", ")))
	}
	if unchecked > 0 {
		sentences = append(sentences, count(unchecked, "thing was", "things were")+" not checked.")
	}
	return strings.Join(sentences, " ")
}

func count(n int, one, many string) string {
	if n == 1 {
		return "1 " + one
	}
	return fmt.Sprintf("%d %s", n, many)
}

// commandData and propertyValue escape as @actions/core does (escapeData and
// escapeProperty in command.ts of actions/toolkit).
func commandData(s string) string {
	return strings.NewReplacer("%", "%25", "\r", "%0D", "\n", "%0A").Replace(s)
}

func propertyValue(s string) string {
	return strings.NewReplacer("%", "%25", "\r", "%0D", "\n", "%0A", ":", "%3A", ",", "%2C").Replace(s)
}

// harmless takes from a plain line what the runner would read as a command in the
// middle of it: the older form, ##[name].
func harmless(s string) string { return strings.ReplaceAll(s, "##[", "## [") }
