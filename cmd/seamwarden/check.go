package main

import (
	"errors"
	"fmt"
	"path/filepath"

	"github.com/spf13/cobra"
)

func newCheck() *cobra.Command {
	var all bool
	cmd := &cobra.Command{
		Use:   "check [DIR...]",
		Short: "Say what in a pattern does not fit",
		Long: "Check reads the pattern in each folder and prints what does not fit: the line, the\n" +
			"other place that matters, why, and what to do. Without a folder it checks this one.\n\n" +
			"It ends with status 0 if nothing is found, 1 if there are findings, and 2 if a\n" +
			"pattern could not be read. Advice, and things that could not be checked, do not\n" +
			"change the status.",
		Example:           "  seamwarden check samples/market-apron\n  seamwarden check --unchecked .",
		ValidArgsFunction: completeFolders,
		RunE: func(cmd *cobra.Command, args []string) error {
			if len(args) == 0 {
				args = []string{"."}
			}
			return each(cmd, args, func(dir string) error {
				return checkFolder(cmd, filepath.Clean(dir), all)
			})
		},
	}
	cmd.Flags().BoolVar(&all, "unchecked", false, "list what was not checked as well")
	return cmd
}

// checkFolder compiles a folder and prints what was found; all lists what was
// not checked as well.
func checkFolder(cmd *cobra.Command, dir string, all bool) error {
	r, err := compile(dir)
	if err != nil {
		return err
	}
	if all {
		return report(cmd, dir, r, true, "")
	}
	return report(cmd, dir, r, false, "--unchecked")
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
