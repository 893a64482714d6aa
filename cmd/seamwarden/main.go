// Command seamwarden checks sewing patterns and makes their booklets.
//
// In: arguments, a pattern's folder, standard input. Out: findings on standard
// error, the names of files on standard output, files, an exit status. It knows
// nothing of sewing: it opens folders, hands them to the compiler and the
// renderers, and puts on disk what comes back.
package main

import (
	"errors"
	"fmt"
	"os"
	"runtime/debug"

	"github.com/spf13/cobra"
)

// version is the edition of the program; the revision is added if it is known.
const version = "0.1.0"

// The exit statuses.
const (
	exitClean  = 0 // nothing was found
	exitFound  = 1 // there are findings, or files that are not formatted
	exitFailed = 2 // it could not run
)

// errFound and errFailed end a command whose findings, or whose reason, have been
// printed already.
var (
	errFound  = errors.New("there are findings")
	errFailed = errors.New("it could not run")
)

func main() {
	if os.Getenv("GOGC") == "" && os.Getenv("GOMEMLIMIT") == "" {
		debug.SetGCPercent(-1)
		debug.SetMemoryLimit(memory)
	}
	os.Exit(run(newRoot(), os.Args[1:]))
}

// memory, in bytes, is how much may be in use before what lies about is swept up. A
// pattern needs a few tens of megabytes with all that lies about, so that checking
// one goes without sweeping; of a thousand it is done once in a few.
const memory = 72 << 20

// run carries out a command line and gives the exit status. A fault of the
// program is told as one, so that nobody looks for it in her pattern.
func run(root *cobra.Command, args []string) (status int) {
	defer func() {
		if fault := recover(); fault != nil {
			fmt.Fprint(root.ErrOrStderr(), faultText(fault))
			status = exitFailed
		}
	}()
	root.SetArgs(args)
	err := root.Execute()
	switch {
	case err == nil:
		return exitClean
	case errors.Is(err, errFound):
		return exitFound
	case !errors.Is(err, errFailed):
		fmt.Fprintf(root.ErrOrStderr(), "seamwarden: %v\n", err)
	}
	return exitFailed
}

func newRoot() *cobra.Command {
	root := &cobra.Command{
		Use:   "seamwarden",
		Short: "Check sewing patterns and make their booklets",
		Long: "Seamwarden reads a sewing pattern from its folder, checks that it fits for every\n" +
			"view, option and size, and makes the booklet that the sewist works from.\n\n" +
			"It ends with status 0 if nothing is found, 1 if there are findings, and 2 if it\n" +
			"could not run.",
		Example:       "  seamwarden init tote\n  seamwarden check tote\n  seamwarden build tote --paper a4,letter",
		Version:       versionText(),
		SilenceUsage:  true,
		SilenceErrors: true,
		Args:          noSuchCommand,
		RunE:          func(cmd *cobra.Command, _ []string) error { return cmd.Help() },
	}
	root.SetVersionTemplate("seamwarden {{.Version}}\n")
	root.SetFlagErrorFunc(flagMistake)
	root.PersistentFlags().Var(&pick{allowed: []string{"auto", "always", "never"}, picked: []string{"auto"}, one: true}, "color",
		"colour the findings: auto, always or never")
	root.AddCommand(newCheck(), newBuild(), newLay(), newInspect(), newSize(), newFormat(), newInit(), newExplain())
	root.SetHelpCommand(newHelp())
	root.InitDefaultCompletionCmd()
	for _, cmd := range root.Commands() {
		if cmd.Name() == "completion" {
			tidyCompletion(cmd)
		}
	}
	completePicks(root)
	return root
}

// versionText adds the revision that the program was built from.
func versionText() string {
	info, ok := debug.ReadBuildInfo()
	if !ok {
		return version
	}
	revision, changed := "", ""
	for _, s := range info.Settings {
		switch {
		case s.Key == "vcs.revision":
			revision = s.Value[:min(12, len(s.Value))]
		case s.Key == "vcs.modified" && s.Value == "true":
			changed = ", with changes"
		}
	}
	if revision == "" {
		return version
	}
	return fmt.Sprintf("%s (revision %s%s)", version, revision, changed)
}
