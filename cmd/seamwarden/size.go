package main

import (
	"fmt"
	"io"
	"path/filepath"
	"strings"

	"github.com/spf13/cobra"

	"seamwarden/compiler"
	"seamwarden/compiler/measure"
	"seamwarden/compiler/wording"
	"seamwarden/dsl/finding"
)

// sizing is what `size` is asked for.
type sizing struct {
	unit, format pick
	body         map[string]measure.Measure
}

func newSize() *cobra.Command {
	o := &sizing{unit: pick{allowed: []string{"in", "cm", "mm"}, one: true}, format: pick{allowed: []string{"text", "json"}, picked: []string{"text"}, one: true}}
	cmd := &cobra.Command{
		Use:   "size [DIR] --MEASURE LENGTH...",
		Short: "Say which size fits somebody's measures",
		Long: "Size takes somebody's body measures and says which size of the pattern to make: by\n" +
			"which measure it is chosen, what ease it leaves, what to do where another measure\n" +
			"falls in another size, and what to think of between two sizes. Several drafts, such\n" +
			"as cups, are compared.\n\n" +
			"A measure is given by its key in the body part of the pattern's table of sizes, such\n" +
			"as --bust or --hip, with its unit: 36in, 91.5cm. With --unit a number needs none.\n" +
			"The measure that leads must be among them; an error says which that is, and which\n" +
			"others the table knows.\n\n" +
			"--format json writes the same for a program.",
		Example: "  seamwarden size samples/gale-parka --bust 36in --waist 70cm --hip 98cm\n" +
			"  seamwarden size samples/puddle-cape --unit cm --height 107",
		ValidArgsFunction:  completeFolders,
		DisableFlagParsing: true, // which measures there are is known once the pattern is read
		RunE: func(cmd *cobra.Command, args []string) error {
			return o.run(cmd, args)
		},
	}
	f := cmd.Flags()
	f.Var(&o.unit, "unit", "the unit of measures that are given without one: in, cm or mm")
	f.Var(&o.format, "format", "text or json")
	return cmd
}

// run parts the flags of the command from the measures, and chooses.
func (o *sizing) run(cmd *cobra.Command, args []string) error {
	flags, measures, dirs, err := o.part(cmd, args)
	if err != nil {
		return err
	}
	if err := cmd.Flags().Parse(flags); err != nil {
		return flagMistake(cmd, err)
	}
	if help, _ := cmd.Flags().GetBool("help"); help {
		return cmd.Help()
	}
	if err := takes(0, 1, "one folder")(cmd, dirs); err != nil {
		return err
	}
	if err := o.read(measures); err != nil {
		return err
	}
	return o.choose(cmd, filepath.Clean(append(dirs, ".")[0]))
}

// given is a measure on the command line.
type given struct{ key, text string }

// part divides the arguments into flags of the command, measures and folders.
func (o *sizing) part(cmd *cobra.Command, args []string) (flags []string, measures []given, dirs []string, err error) {
	cmd.InitDefaultHelpFlag()
	cmd.InheritedFlags() // so that the flags of the program are among the command's
	for i := 0; i < len(args); i++ {
		name, value, has := strings.Cut(args[i], "=")
		key := strings.TrimPrefix(name, "--")
		switch f := cmd.Flags().Lookup(key); {
		case args[i] == "-h" || key == "help" && name != key:
			flags = append(flags, "--help")
			continue
		case !strings.HasPrefix(args[i], "-"):
			dirs = append(dirs, args[i])
			continue
		case key == name || key == "":
			return nil, nil, nil, fmt.Errorf("seamwarden size has no flag %s", name)
		case !has && i+1 < len(args) && !strings.HasPrefix(args[i+1], "--"):
			i++
			value, has = args[i], true
			fallthrough
		default:
			if f != nil && has {
				flags = append(flags, "--"+key+"="+value)
			} else if f != nil {
				flags = append(flags, "--"+key)
			} else {
				measures = append(measures, given{key, value})
			}
		}
	}
	return
}

// read reads the measures.
func (o *sizing) read(measures []given) error {
	o.body = map[string]measure.Measure{}
	for _, g := range measures {
		if _, twice := o.body[g.key]; twice {
			return fmt.Errorf("--%s is given twice", g.key)
		}
		text := strings.TrimSpace(g.text)
		if text == "" {
			return fmt.Errorf("--%s needs a length with its unit, such as 92cm or 36 1/4in", g.key)
		}
		m, err := measure.ParseLoose(text)
		if err != nil && o.unit.given {
			m, err = measure.ParseLoose(text + o.unit.String())
		}
		if err != nil {
			return fmt.Errorf("--%s takes a length with its unit, such as 92cm or 36 1/4in, not %q", g.key, text)
		}
		m.Text = ""
		o.body[g.key] = m
	}
	return nil
}

// choose chooses and prints. Findings do not keep it from that; the closing line and
// the status tell that there are some.
func (o *sizing) choose(cmd *cobra.Command, dir string) error {
	r, err := compile(dir)
	if err != nil {
		return err
	}
	chosen, told, err := compiler.ChooseSize(r.Pattern, o.body)
	if err != nil {
		return err
	}
	if o.format.has("json") {
		if err := writeSize(cmd.OutOrStdout(), r.Pattern.Title, chosen, told); err != nil {
			return err
		}
	} else {
		tellSize(cmd.OutOrStdout(), told)
	}
	if found, _, _ := finding.Counts(r.Findings); found > 0 {
		fmt.Fprintf(cmd.ErrOrStderr(), "%s in %s, so this may be otherwise; seamwarden check lists them.\n", count(found, "finding", "findings"), label(dir))
		return errFound
	}
	return nil
}

// tellSize prints a choice for a person.
func tellSize(w io.Writer, t *wording.SizeTold) {
	fmt.Fprintln(w, finding.OneLine(t.Heading))
	fmt.Fprintln(w)
	for _, m := range t.Measures {
		wrapped(w, "  ", finding.OneLine(m.Line))
		for _, e := range m.Ease {
			wrapped(w, "      ", finding.OneLine(e))
		}
	}
	for _, part := range [][]string{t.Say, t.Others} {
		if len(part) > 0 {
			fmt.Fprintln(w)
		}
		for _, s := range part {
			wrapped(w, "", finding.OneLine(s))
		}
	}
}
