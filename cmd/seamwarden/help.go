package main

import (
	"fmt"
	"strings"

	"github.com/spf13/cobra"
	"github.com/spf13/pflag"
)

// newHelp is the command `help`, which the library's own would end with status 0
// for a command that is not there.
func newHelp() *cobra.Command {
	return &cobra.Command{
		Use:     "help [COMMAND]",
		Short:   "Show how a command is used",
		Example: "  seamwarden help build",
		Args:    takes(0, 2, "one command"),
		ValidArgsFunction: func(cmd *cobra.Command, _ []string, _ string) (names []string, _ cobra.ShellCompDirective) {
			for _, c := range cmd.Root().Commands() {
				if c.IsAvailableCommand() {
					names = append(names, cobra.CompletionWithDesc(c.Name(), c.Short))
				}
			}
			return names, cobra.ShellCompDirectiveNoFileComp
		},
		RunE: func(cmd *cobra.Command, args []string) error {
			about, rest, err := cmd.Root().Find(args)
			if err != nil {
				return err
			}
			if about.HasSubCommands() {
				if err := noSuchCommand(about, rest); err != nil {
					return err
				}
			} else if len(rest) > 0 {
				return fmt.Errorf("there is no command %q", strings.Join(args, " "))
			}
			about.InitDefaultHelpFlag()
			return about.Help()
		},
	}
}

// tidyCompletion gives the library's command `completion` our words, and an error
// for a shell that it does not know.
func tidyCompletion(cmd *cobra.Command) {
	cmd.Short = "Print the script that lets your shell complete commands"
	cmd.Long = cmd.Short + ".\nThe help of each shell says where the script goes."
	cmd.Example = "  seamwarden completion bash --help"
	var shells []string
	for _, c := range cmd.Commands() {
		c.Short = fmt.Sprintf("Print the script for %s", c.Name())
		c.Example = fmt.Sprintf("  seamwarden completion %s", c.Name())
		c.Args = takes(0, 0, "nothing more")
		shells = append(shells, c.Name())
	}
	cmd.RunE = func(cmd *cobra.Command, _ []string) error { return cmd.Help() }
	cmd.Args = func(cmd *cobra.Command, args []string) error {
		if len(args) == 0 {
			return nil
		}
		return meant(fmt.Sprintf("there are completions for %s, not %q", spoken(shells, "and"), args[0]), nearestCommand(cmd, args[0]))
	}
}

// completePicks lets the shell complete the values of every flag that takes one
// of a few words.
func completePicks(cmd *cobra.Command) {
	complete := func(f *pflag.Flag) {
		if p, ok := f.Value.(*pick); ok {
			_ = cmd.RegisterFlagCompletionFunc(f.Name, cobra.FixedCompletions(p.allowed, cobra.ShellCompDirectiveNoFileComp))
		}
	}
	cmd.LocalFlags().VisitAll(complete)
	for _, c := range cmd.Commands() {
		completePicks(c)
	}
}
