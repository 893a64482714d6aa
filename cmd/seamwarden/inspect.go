package main

import (
	"fmt"
	"io"
	"path/filepath"
	"strings"

	"github.com/spf13/cobra"

	"seamwarden/compiler"
	"seamwarden/compiler/wording"
	"seamwarden/dsl/finding"
)

// inspecting is what `inspect` is asked for.
type inspecting struct {
	chooser
	after   string
	sources bool
}

func newInspect() *cobra.Command {
	o := &inspecting{}
	cmd := &cobra.Command{
		Use:   "inspect [DIR]",
		Short: "Show what is in your hands after a step",
		Long: "Inspect shows how far a garment is after a step: which cut parts hang together and\n" +
			"which of their edges are open, what is not sewn to anything yet, which interfacing\n" +
			"is still to be put in, the openings that are left, the seams that wait for the iron\n" +
			"or for a finish, and the notions that are not used yet.\n\n" +
			"--after takes the name of a step or its number, as the booklet for the chosen\n" +
			"garments has it; 0 is before the first step. Without it, the last step is meant.\n\n" +
			"It looks at one garment. What you do not choose, it chooses: the first view and\n" +
			"ways, without options, but so that the garment has the step. It says which it took.",
		Example: "  seamwarden inspect samples/dusk-skirt --after facing-in\n" +
			"  seamwarden inspect samples/dusk-skirt --after 12 --view B --with pockets",
		Args:              takes(0, 1, "one folder"),
		ValidArgsFunction: completeFolders,
		RunE: func(cmd *cobra.Command, args []string) error {
			if err := o.settle(); err != nil {
				return err
			}
			return inspect(cmd, filepath.Clean(append(args, ".")[0]), o)
		},
	}
	f := cmd.Flags()
	f.StringVar(&o.after, "after", "", "the name or number of a `step`; 0 is before the first")
	f.BoolVar(&o.sources, "names", false, "add the names that the pattern's source uses")
	o.flags(f)
	return cmd
}

// inspect prints what is in hand. Findings do not keep it from that; the closing
// line and the status tell that there are some.
func inspect(cmd *cobra.Command, dir string, o *inspecting) error {
	r, err := compile(dir)
	if err != nil {
		return err
	}
	chosen, err := compiler.Choose(r.Pattern, o.choice)
	if err != nil {
		return err
	}
	seen, guessed, err := compiler.Inspect(r.Pattern, chosen, o.after, o.sources)
	if err != nil {
		return err
	}
	inspection(cmd.OutOrStdout(), seen, guessed)
	if found, _, _ := finding.Counts(r.Findings); found > 0 {
		fmt.Fprintf(cmd.ErrOrStderr(), "%s in %s, so some of this may be otherwise; seamwarden check lists them.\n", count(found, "finding", "findings"), label(dir))
		return errFound
	}
	return nil
}

// widest is how long a line of text may grow.
const widest = 96

// inspection prints what is in hand.
func inspection(w io.Writer, in *wording.Inspection, guessed bool) {
	fmt.Fprintln(w, finding.OneLine(in.Heading))
	if in.Garment != "" {
		fmt.Fprintln(w, finding.OneLine(in.Garment))
	}
	if guessed {
		fmt.Fprintln(w, "(the plainest such garment; --view, --with, --without and --choose take another)")
	}
	for n, p := range in.Parts {
		if n == 0 || p.Title != in.Parts[n-1].Title {
			fmt.Fprintf(w, "\n%s\n", p.Title)
		}
		for _, line := range p.Lines {
			text := strings.TrimLeft(line, " ")
			wrapped(w, "  "+line[:len(line)-len(text)], finding.OneLine(text))
		}
	}
}

// wrapped prints a text behind an indent, and goes on deeper in the next line
// where it is too long for one.
func wrapped(w io.Writer, indent, text string) {
	line := indent
	for n, word := range strings.FieldsFunc(text, func(c rune) bool { return c == ' ' }) { // a no-break space holds
		if n > 0 && len([]rune(line))+1+len([]rune(word)) > widest {
			fmt.Fprintln(w, line)
			line = indent + "    " + word
			continue
		}
		if n > 0 {
			line += " "
		}
		line += word
	}
	fmt.Fprintln(w, line)
}
