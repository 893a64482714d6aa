package main

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"

	"github.com/spf13/cobra"

	"seamwarden/compiler"
	"seamwarden/dsl/finding"
)

// report prints what was found in a folder and a closing line. It gives errFound
// if a finding stops a release. list says how to see what was not checked.
func report(cmd *cobra.Command, dir string, r *compiler.Result, all bool, list string) error {
	findings(cmd, r.Findings, r.Sources, dir, all)
	found, advice, unchecked := finding.Counts(r.Findings)
	fmt.Fprintln(cmd.ErrOrStderr(), closing(dir, found, advice, unchecked, list))
	if found > 0 {
		return errFound
	}
	return nil
}

// findings prints findings for a person. dir is put before the names of files;
// what was not checked is printed only if all is set.
func findings(cmd *cobra.Command, list []finding.Finding, sources map[string]string, dir string, all bool) {
	w := &finding.Writer{Out: cmd.ErrOrStderr(), Sources: sources, Colour: coloured(cmd)}
	if dir != "." {
		w.Folder = filepath.ToSlash(dir)
	}
	for _, f := range list {
		if all || f.Severity != finding.Unchecked {
			w.Write(f)
		}
	}
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
	f, ok := cmd.ErrOrStderr().(*os.File)
	if !ok || os.Getenv("NO_COLOR") != "" || os.Getenv("TERM") == "dumb" {
		return false
	}
	st, err := f.Stat()
	return err == nil && st.Mode()&os.ModeCharDevice != 0
}

// closing is the last line about a folder. list says how to see what was not
// checked; it is empty where that has been printed.
func closing(dir string, found, advice, unchecked int, list string) string {
	var line string
	tips := count(advice, "piece of advice", "pieces of advice")
	switch {
	case found > 0 && advice > 0:
		line = fmt.Sprintf("%s and %s in %s", count(found, "finding", "findings"), tips, label(dir))
	case found > 0:
		line = fmt.Sprintf("%s in %s", count(found, "finding", "findings"), label(dir))
	case advice > 0:
		line = fmt.Sprintf("%s: nothing found but %s", label(dir), tips)
	default:
		line = label(dir) + ": nothing found"
	}
	if unchecked > 0 {
		them := "them"
		if unchecked == 1 {
			them = "it"
		}
		line += fmt.Sprintf("; %s not checked", count(unchecked, "thing was", "things were"))
		if list != "" {
			line += fmt.Sprintf(" (list %s with %s)", them, list)
		}
	}
	return strings.Replace(line, "this folder:", "This folder:", 1) + "."
}

func count(n int, one, many string) string {
	if n == 1 {
		return "1 " + one
	}
	return fmt.Sprintf("%d %s", n, many)
}
