package main

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"strings"

	"github.com/spf13/cobra"

	"seamwarden/compiler/check"
	"seamwarden/dsl/finding"
	"seamwarden/dsl/finding/report"
)

// formatNames are the formats in which findings are told.
var formatNames = []string{"text", "json", "sarif", "github", "junit"}

// writers are the formats for programs.
var writers = map[string]func(io.Writer, report.Input) error{
	"json": report.JSON, "sarif": report.SARIF, "github": report.GitHub, "junit": report.JUnit,
}

// format is one format and the file that it goes into, "" for none.
type format struct{ name, file string }

// formats is the flag --format, with --output.
type formats struct {
	list   []format
	output string
}

// Set takes NAME or NAME=FILE, several of them with commas between. A comma or a
// second equals sign belongs to the file, where one is named.
func (f *formats) Set(s string) error {
	for s != "" {
		name, rest, _ := strings.Cut(s, ",")
		file := ""
		if n, to, named := strings.Cut(s, "="); named && !strings.Contains(n, ",") {
			name, file, rest = n, to, ""
			if to == "" {
				return fmt.Errorf("a file behind the equals sign, as in %s=findings.%s", n, n)
			}
		}
		s = rest
		w := strings.ToLower(strings.TrimSpace(name))
		if !slices.Contains(formatNames, w) {
			return meant(fmt.Sprintf("%s, not %q", spoken(formatNames, "or"), name), finding.Nearest(w, formatNames))
		}
		if slices.ContainsFunc(f.list, func(x format) bool { return x.name == w && x.file == file }) {
			continue
		}
		f.list = append(f.list, format{w, file})
	}
	return nil
}

func (f *formats) String() string { return "" }

// Type is what the help calls the value.
func (f *formats) Type() string { return "NAME" }

// settle gives the format without a file the one of --output, and refuses what
// cannot be meant. Text beside another format stays on standard error.
func (f *formats) settle() error {
	if len(f.list) == 0 {
		f.list = []format{{"text", ""}}
	}
	var open []*format
	for i := range f.list {
		if x := &f.list[i]; x.file == "" && (x.name != "text" || len(f.list) == 1) {
			open = append(open, x)
		}
	}
	switch {
	case f.output != "" && len(open) == 0:
		return errors.New("every format names its file already; take --output away")
	case f.output != "" && len(open) > 1:
		return fmt.Errorf("--output is for one format; name a file for each, as in --format %s=FILE", open[0].name)
	case f.output != "":
		open[0].file = f.output
	}
	return f.apart()
}

// apart refuses two formats in one place.
func (f *formats) apart() error {
	taken := map[string]string{}
	for _, x := range f.list {
		if x.name == "text" && x.file == "" {
			continue // it has standard error for itself
		}
		where := x.file
		if where != "" {
			where = filepath.Clean(where)
		}
		switch old, twice := taken[where]; {
		case twice && where == "":
			return fmt.Errorf("%s and %s cannot both go to standard output; name a file for one, as in --format %s=FILE", old, x.name, x.name)
		case twice:
			return fmt.Errorf("%s and %s cannot both go into %s", old, x.name, where)
		}
		taken[where] = x.name
	}
	return nil
}

// output takes what came out of the folders and writes every format.
type output struct {
	cmd   *cobra.Command
	list  []format
	text  io.Writer     // for a person; nil if none is wanted
	texts *bytes.Buffer // what goes into a file as text
	input *report.Input // for programs; nil if none is wanted
}

// open makes ready for the formats. A file that could not be written in the end is
// refused before anything is checked.
func (f *formats) open(cmd *cobra.Command) (*output, error) {
	o := &output{cmd: cmd, list: f.list}
	var to []io.Writer
	for _, x := range f.list {
		if x.file != "" {
			if err := refuseFile(x.file); err != nil {
				return nil, err
			}
		}
		switch {
		case x.name != "text":
			o.input = &report.Input{Tool: report.Tool{Name: "seamwarden", Version: version}, Rules: ruleInfos()}
		case x.file == "":
			to = append(to, cmd.ErrOrStderr())
		default:
			o.texts = &bytes.Buffer{}
		}
	}
	if len(to) > 0 {
		o.text = to[0]
	}
	return o, nil
}

// ruleInfos tells what every rule is about.
func ruleInfos() (all []report.RuleInfo) {
	for _, r := range check.Rules() {
		all = append(all, report.RuleInfo{ID: r.ID, Purpose: r.Purpose, Why: r.Why, Severity: r.Severity, Category: r.Category})
	}
	return
}

// add tells what came out of a folder. Why one could not be read always goes to
// standard error.
func (o *output) add(c *checked, show *shown) {
	if o.text != nil {
		tell(o.text, coloured(o.cmd), c, show)
	} else {
		tellMended(o.cmd.ErrOrStderr(), c)
	}
	if c.failed != nil {
		fmt.Fprintf(o.cmd.ErrOrStderr(), "seamwarden: %v\n", c.failed)
	}
	if o.texts != nil {
		tell(o.texts, false, c, show)
	}
	if o.input != nil {
		folder := report.Folder{Path: filepath.ToSlash(c.dir), Findings: c.findings, Accepted: c.accepted, Sources: c.sources}
		if c.failed != nil {
			folder.Failed = sentenceOf(c.failed)
		}
		o.input.Folders = append(o.input.Folders, folder)
	}
}

// close writes the formats for programs, and all files.
func (o *output) close() (err error) {
	for _, x := range o.list {
		var b bytes.Buffer
		switch {
		case x.name != "text":
			if e := writers[x.name](&b, *o.input); e != nil {
				err = errors.Join(err, fmt.Errorf("%s cannot be written: %w", x.name, e))
				continue
			}
		case x.file != "":
			b = *o.texts
		default:
			continue
		}
		if x.file == "" {
			_, e := b.WriteTo(o.cmd.OutOrStdout())
			err = errors.Join(err, e)
		} else {
			err = errors.Join(err, writeReport(x.file, b.Bytes()))
		}
	}
	return
}

// sentenceOf words an error as a sentence that stands alone.
func sentenceOf(err error) string {
	s := err.Error()
	return strings.ToUpper(s[:1]) + s[1:] + "."
}

// refuseFile refuses a name under which no report could be written.
func refuseFile(name string) error {
	st, err := os.Stat(name)
	switch {
	case err == nil && st.IsDir():
		return fmt.Errorf("%s is a folder; name a file", name)
	case errors.Is(err, fs.ErrNotExist) && !isFolder(filepath.Dir(name)):
		return meant(fmt.Sprintf("there is no folder %s to put %s in", filepath.Dir(name), filepath.Base(name)), nearestPath(filepath.Dir(name)))
	}
	return nil
}

// writeReport writes a file whole or not at all. What is no plain file, such as a
// pipe, is written to as it is; a link is followed.
func writeReport(name string, data []byte) error {
	path := name
	if real, err := filepath.EvalSymlinks(name); err == nil {
		path = real
	}
	mode := newMode
	st, err := os.Stat(path)
	switch {
	case err == nil && !st.Mode().IsRegular():
		err = os.WriteFile(path, data, newMode)
	default:
		if err == nil {
			mode = st.Mode().Perm()
		}
		var root *os.Root
		if root, err = os.OpenRoot(filepath.Dir(path)); err == nil {
			defer root.Close()
			err = put(root, []file{{filepath.Base(path), data, mode}})
		}
	}
	if err != nil {
		return fmt.Errorf("%s cannot be written: %w", name, plain(err))
	}
	return nil
}
