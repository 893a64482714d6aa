package main

import (
	"errors"
	"fmt"
	"path/filepath"

	"github.com/spf13/cobra"

	"seamwarden/compiler"
	"seamwarden/compiler/booklet"
	"seamwarden/dsl/finding"
	"seamwarden/render/html"
	"seamwarden/render/pdf"
)

// papers are the sheets by the names of their flag.
var papers = map[string]pdf.Paper{"a4": pdf.A4, "letter": pdf.Letter}

// wanted is what a build is asked for.
type wanted struct {
	out         string
	paper, only pick
	chooser
}

func newBuild() *cobra.Command {
	w := &wanted{
		paper: pick{allowed: []string{"a4", "letter"}, picked: []string{"a4"}},
		only:  pick{allowed: []string{"html", "pdf"}, picked: []string{"html", "pdf"}},
	}
	cmd := &cobra.Command{
		Use:   "build [DIR]",
		Short: "Make the booklet of a pattern, to print and for the screen",
		Long: "Build checks the pattern in a folder and makes its booklet: a PDF for each paper\n" +
			"and an HTML page. They are named after the title and go into the folder `out` of\n" +
			"the pattern, unless -o names another. Their paths are printed.\n\n" +
			"If the check finds anything but advice, nothing is written and the status is 1;\n" +
			"what an earlier build made stays as it is.\n\n" +
			"The booklet is for every garment of the pattern. --view, --size, --with,\n" +
			"--without and --choose make one for some of them, and its files say so in their\n" +
			"names.",
		Example: "  seamwarden build samples/dusk-skirt\n" +
			"  seamwarden build samples/dusk-skirt --paper a4,letter -o booklets\n" +
			"  seamwarden build samples/dusk-skirt --view B --size 12 --with pockets --choose band=bound",
		Args:              takes(0, 1, "one folder"),
		ValidArgsFunction: completeFolders,
		RunE: func(cmd *cobra.Command, args []string) error {
			if err := w.settle(); err != nil {
				return err
			}
			return build(cmd, append(args, ".")[0], w)
		},
	}
	w.flags(cmd)
	return cmd
}

func (w *wanted) flags(cmd *cobra.Command) {
	f := cmd.Flags()
	f.StringVarP(&w.out, "out", "o", "", "the `folder` for the booklet (default: out in the pattern's folder)")
	f.Var(&w.paper, "paper", "paper of the PDF: a4, letter, or both with a comma")
	f.Var(&w.only, "only", "make only html or only pdf")
	w.chooser.flags(f)
	_ = cmd.MarkFlagDirname("out")
}

// settle refuses what cannot be meant.
func (w *wanted) settle() error {
	if w.paper.given && !w.only.has("pdf") {
		return errors.New("--paper is for the PDF, and --only leaves the PDF out; take one of them away")
	}
	return w.chooser.settle()
}

func build(cmd *cobra.Command, dir string, w *wanted) error {
	dir = filepath.Clean(dir)
	out := w.out
	if out == "" {
		out = filepath.Join(dir, "out")
	}
	if err := refuseFolder(out); err != nil {
		return err
	}
	r, err := compile(dir)
	if err != nil {
		return err
	}
	b, err := w.word(cmd, dir, r)
	if err != nil {
		return err
	}
	files, err := w.render(cmd, b)
	if err != nil {
		return err
	}
	if err := putAll(out, files); err != nil {
		return err
	}
	for _, f := range files {
		fmt.Fprintln(cmd.OutOrStdout(), filepath.Join(out, f.name))
	}
	return nil
}

// word makes the booklet for what was chosen, unless something was found.
func (w *wanted) word(cmd *cobra.Command, dir string, r *compiler.Result) (*booklet.Booklet, error) {
	if found, _, _ := finding.Counts(r.Findings); found > 0 {
		err := announce(cmd, dir, r)
		fmt.Fprintln(cmd.ErrOrStderr(), "No booklet was made.")
		return nil, err
	}
	chosen, err := compiler.Choose(r.Pattern, w.choice)
	if err != nil {
		return nil, err
	}
	if err := announce(cmd, dir, r); err != nil {
		return nil, err
	}
	b, err := compiler.Booklet(r.Pattern, chosen)
	if err != nil {
		return nil, fmt.Errorf("the booklet cannot be worded: %w", err)
	}
	return b, nil
}

// render makes every file that is asked for, and writes none of them.
func (w *wanted) render(cmd *cobra.Command, b *booklet.Booklet) (files []file, err error) {
	name := fileName(b.Title, w.choice)
	if w.only.has("html") {
		page, err := html.Render(b)
		if err != nil {
			return nil, fmt.Errorf("the HTML page cannot be made: %w", err)
		}
		files = append(files, file{name + ".html", page, newMode})
	}
	if !w.only.has("pdf") {
		return files, nil
	}
	missing := map[rune]bool{}
	for _, p := range w.paper.picked {
		print, err := pdf.Render(b, pdf.Options{Paper: papers[p]})
		if err != nil {
			return nil, fmt.Errorf("the PDF cannot be made: %w", err)
		}
		for _, r := range print.MissingGlyphs {
			if !missing[r] {
				fmt.Fprintf(cmd.ErrOrStderr(), "The print has no sign for %q (%U); a box stands in its place.\n", r, r)
			}
			missing[r] = true
		}
		files = append(files, file{name + "-" + p + ".pdf", print.Bytes, newMode})
	}
	return files, nil
}
