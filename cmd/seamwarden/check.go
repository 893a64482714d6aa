package main

import (
	"errors"
	"fmt"

	"github.com/spf13/cobra"

	"seamwarden/compiler/check"
	"seamwarden/dsl/finding"
	"seamwarden/dsl/finding/report"
)

// checking is what `check` is asked for.
type checking struct {
	show    shown
	formats formats
	fix     bool
	also    []string
	schema  bool
}

func newCheck() *cobra.Command {
	o := &checking{}
	cmd := &cobra.Command{
		Use:   "check [DIR...]",
		Short: "Say what in a pattern does not fit",
		Long: "Check reads the pattern in each folder and prints what does not fit: the line, the\n" +
			"other place that matters, why, and what to do. Without a folder it checks this one.\n" +
			"In a folder that is no pattern it checks the patterns in the folders right inside.\n\n" +
			"A finding that is meant to be so is accepted in the source by a remark with its\n" +
			"name and the reason: // accept piece-never-used: a spare. --accepted lists those.\n\n" +
			"--format writes what was found for a program: json, sarif (2.1.0), github (remarks\n" +
			"on a workflow) or junit. It goes to standard output, or with --format sarif=FILE to\n" +
			"a file; several formats can be named. Text goes to standard error, and where other\n" +
			"formats are named only if it is named too. --schema prints the JSON Schema of json.\n\n" +
			"--fix first makes the changes that are certain, such as a word that is misspelt, and\n" +
			"says which. It leaves a file alone in which a change is not certain.\n\n" +
			"--also NAME looks for what is a matter of taste as well, such as sentence-too-long;\n" +
			"explain says of each finding if it has to be asked for.\n\n" +
			"It ends with status 0 if nothing is found, 1 if there are findings, and 2 if a\n" +
			"pattern could not be read. Advice, and things that could not be checked, do not\n" +
			"change the status.",
		Example: "  seamwarden check samples/market-apron\n  seamwarden check --unchecked .\n" +
			"  seamwarden check --format text --format sarif=findings.sarif samples",
		ValidArgsFunction: completeFolders,
		RunE: func(cmd *cobra.Command, args []string) error {
			if o.schema {
				return printSchema(cmd, args)
			}
			if err := errors.Join(o.formats.settle(), askedFor(o.also)); err != nil {
				return err
			}
			return checkAll(cmd, args, o)
		},
	}
	f := cmd.Flags()
	f.BoolVar(&o.show.unchecked, "unchecked", false, "list what was not checked as well")
	f.BoolVar(&o.show.accepted, "accepted", false, "list what remarks accept as well, and why")
	f.BoolVar(&o.fix, "fix", false, "make the changes that are certain first")
	f.StringSliceVar(&o.also, "also", nil, "look for this finding as well, which is not looked for unasked, as `NAME`")
	f.Var(&o.formats, "format", "text, json, sarif, github or junit, or one of them and a file as `NAME=FILE`")
	f.StringVarP(&o.formats.output, "output", "o", "", "the `file` for the format that names none")
	f.BoolVar(&o.schema, "schema", false, "print the JSON Schema of the format json")
	_ = cmd.RegisterFlagCompletionFunc("format", cobra.FixedCompletions(formatNames, cobra.ShellCompDirectiveNoFileComp))
	_ = cmd.RegisterFlagCompletionFunc("also", func(*cobra.Command, []string, string) ([]string, cobra.ShellCompDirective) {
		return onRequest(), cobra.ShellCompDirectiveNoFileComp
	})
	o.show.hint = [2]string{"--unchecked", "--accepted"}
	return cmd
}

// onRequest lists the findings that are looked for only if somebody asks.
func onRequest() (names []string) {
	for _, r := range check.Rules() {
		if r.Asked {
			names = append(names, r.ID)
		}
	}
	return names
}

// askedFor refuses names that ask for nothing.
func askedFor(names []string) error {
	for _, name := range names {
		switch r := check.Find(name); {
		case r == nil:
			return meant(fmt.Sprintf("there is no finding %q to look for", name), finding.Nearest(name, onRequest()))
		case !r.Asked:
			return fmt.Errorf("%s is always looked for; --also is for %s", name, spoken(onRequest(), "or"))
		}
	}
	return nil
}

func printSchema(cmd *cobra.Command, args []string) error {
	if len(args) > 0 {
		return errors.New("--schema stands alone; it prints the schema and checks nothing")
	}
	_, err := cmd.OutOrStdout().Write(report.Schema())
	return err
}

// checkAll checks every folder, prints what is found in the order of the folders,
// and then writes what programs read.
func checkAll(cmd *cobra.Command, args []string, o *checking) error {
	out, err := o.formats.open(cmd)
	if err != nil {
		return err
	}
	progress := newProgress(cmd, checkedFolders)
	defer progress.end()
	look := func(dir string) *checked { return checkFolder(dir, o.fix, o.also...) }
	var worst error
	dirs := folders(args)
	progress.done(0, len(dirs))
	inOrder(dirs, look, func(n int, c *checked) {
		progress.pause()
		out.add(c, &o.show)
		worst = worse(worst, c)
		progress.done(n+1, len(dirs))
	})
	progress.end()
	return errors.Join(worst, out.close())
}

func checkedFolders(n, of int) string { return fmt.Sprintf("Checked %d of %d folders", n, of) }

// worse gives the worse of an error so far and how a folder came out.
func worse(worst error, c *checked) error {
	switch {
	case c.failed != nil:
		return errFailed
	case worst == nil && c.counts.found > 0:
		return errFound
	}
	return worst
}

// each does something for every name, even after one of them failed, and gives
// the worst of what came back.
func each(cmd *cobra.Command, names []string, do func(string) error) (worst error) {
	for _, name := range names {
		err := do(name)
		switch {
		case err == nil:
		case errors.Is(err, errFound):
			if worst == nil {
				worst = errFound
			}
		default:
			fmt.Fprintf(cmd.ErrOrStderr(), "seamwarden: %v\n", err)
			worst = errFailed
		}
	}
	return worst
}

func completeFolders(*cobra.Command, []string, string) ([]string, cobra.ShellCompDirective) {
	return nil, cobra.ShellCompDirectiveFilterDirs
}
