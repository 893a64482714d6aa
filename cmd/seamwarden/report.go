package main

import (
	"fmt"
	"io"
	"os"
	"path/filepath"
	"strings"

	"github.com/spf13/cobra"

	"seamwarden/compiler"
	"seamwarden/dsl/finding"
)

// shown is what is listed beside the findings, and how to ask for the rest.
type shown struct {
	unchecked, accepted bool
	hint                [2]string // what lists things not checked, and accepted; "" says nothing
}

// tell prints what came out of a folder for a person: what was mended, the
// findings and a closing line.
func tell(w io.Writer, colour bool, c *checked, show *shown) {
	tellMended(w, c)
	if c.failed != nil {
		return
	}
	f := &finding.Writer{Out: w, Sources: c.sources, Colour: colour, Folder: folderOf(c.dir)}
	writeFindings(f, c.findings, show.unchecked)
	if show.accepted {
		for _, a := range c.accepted {
			writeAccepted(w, f.Folder, a)
		}
	}
	fmt.Fprintln(w, closing(c.dir, c.counts, show))
}

// announce prints what was found in a folder before it is built, and gives
// errFound if a finding stops a release.
func announce(cmd *cobra.Command, dir string, r *compiler.Result) error {
	c := &checked{dir: dir, findings: r.Findings, sources: r.Sources, counts: countsOf(r)}
	tell(cmd.ErrOrStderr(), coloured(cmd), c, &shown{hint: [2]string{"seamwarden check --unchecked", ""}})
	if c.counts.found > 0 {
		return errFound
	}
	return nil
}

// folderOf is what stands before the names of files in findings.
func folderOf(dir string) string {
	if dir == "." {
		return ""
	}
	return filepath.ToSlash(dir)
}

// writeFindings prints findings; what was not checked only if that is asked for.
func writeFindings(w *finding.Writer, list []finding.Finding, unchecked bool) {
	for _, f := range list {
		if unchecked || f.Severity != finding.Unchecked {
			w.Write(f)
		}
	}
}

// writeAccepted prints a finding that a remark accepts, and the reason.
func writeAccepted(w io.Writer, folder string, a finding.Accepted) {
	fmt.Fprintf(w, "accepted: %s [%s]\n  %s\n", a.Heading(), a.Rule, placeOf(folder, a.Place.Span))
	reason := a.By.Reason
	if reason == "" {
		reason = "none is given"
	}
	fmt.Fprintf(w, "  reason: %s\n\n", finding.OneLine(reason))
}

// placeOf is a place as editors and terminals follow it.
func placeOf(folder string, s finding.Span) string {
	name := finding.OneLine(filepath.ToSlash(filepath.Join(folder, s.File)))
	if s.Start.Line == 0 {
		return name
	}
	return fmt.Sprintf("%s:%d:%d", name, s.Start.Line, s.Start.Column)
}

// coloured reports whether findings are painted: as --color says, or else if they
// go to a terminal and NO_COLOR (no-color.org) is not set.
func coloured(cmd *cobra.Command) bool {
	switch cmd.Flag("color").Value.String() {
	case "always":
		return true
	case "never":
		return false
	}
	return os.Getenv("NO_COLOR") == "" && isTerminal(cmd.ErrOrStderr())
}

// isTerminal reports whether text goes to a terminal that knows more than letters.
func isTerminal(w io.Writer) bool {
	f, ok := w.(*os.File)
	if !ok || os.Getenv("TERM") == "dumb" {
		return false
	}
	st, err := f.Stat()
	return err == nil && st.Mode()&os.ModeCharDevice != 0
}

// closing is the last line about a folder.
func closing(dir string, c counts, show *shown) string {
	var line string
	tips := count(c.advice, "piece of advice", "pieces of advice")
	switch {
	case c.found > 0 && c.advice > 0:
		line = fmt.Sprintf("%s and %s in %s", count(c.found, "finding", "findings"), tips, label(dir))
	case c.found > 0:
		line = fmt.Sprintf("%s in %s", count(c.found, "finding", "findings"), label(dir))
	case c.advice > 0:
		line = fmt.Sprintf("%s: nothing found but %s", label(dir), tips)
	default:
		line = label(dir) + ": nothing found"
	}
	line += more(c.accepted, "finding is accepted", "findings are accepted", show.accepted, show.hint[1])
	line += more(c.unchecked, "thing was not checked", "things were not checked", show.unchecked, show.hint[0])
	return strings.Replace(line, "this folder:", "This folder:", 1) + "."
}

// more adds how many others there are, and how to list them.
func more(n int, one, many string, listed bool, hint string) string {
	if n == 0 {
		return ""
	}
	line := "; " + count(n, one, many)
	if !listed && hint != "" {
		them := "them"
		if n == 1 {
			them = "it"
		}
		line += fmt.Sprintf(" (list %s with %s)", them, hint)
	}
	return line
}

func count(n int, one, many string) string {
	if n == 1 {
		return "1 " + one
	}
	return fmt.Sprintf("%d %s", n, many)
}
