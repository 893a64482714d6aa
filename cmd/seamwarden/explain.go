package main

import (
	"fmt"
	"io"
	"maps"
	"slices"
	"strings"

	"github.com/spf13/cobra"

	"seamwarden/compiler"
	"seamwarden/compiler/check"
	"seamwarden/dsl/finding"
)

func newExplain() *cobra.Command {
	return &cobra.Command{
		Use:   "explain [FINDING]",
		Short: "Say what a finding means, with an example",
		Long: "Explain takes the name that stands in brackets behind a finding, and says what is\n" +
			"looked for, why it matters, and how it looks when it is wrong and when it is right.\n" +
			"Without a name it lists everything that is looked for.",
		Example: "  seamwarden explain piece-never-used\n  seamwarden explain",
		Args:    takes(0, 1, "the name of one finding"),
		ValidArgsFunction: func(_ *cobra.Command, args []string, _ string) (names []string, _ cobra.ShellCompDirective) {
			if len(args) == 0 {
				for _, r := range check.Rules() {
					names = append(names, cobra.CompletionWithDesc(r.ID, r.Purpose))
				}
			}
			return names, cobra.ShellCompDirectiveNoFileComp
		},
		RunE: func(cmd *cobra.Command, args []string) error {
			if len(args) == 0 {
				listRules(cmd.OutOrStdout())
				return nil
			}
			return explain(cmd.OutOrStdout(), args[0])
		},
	}
}

// explain prints what is known of a rule.
func explain(w io.Writer, name string) error {
	id := strings.Trim(strings.ToLower(name), "[]")
	r := check.Find(id)
	if r == nil {
		return noSuchFinding(name, id)
	}
	fmt.Fprintf(w, "%s (%s, %s, since %s)\n\n%s\n", r.ID, r.Category, r.Severity, r.Since, r.Purpose)
	if r.Why != "" {
		fmt.Fprintf(w, "\nWhy: %s\n", r.Why)
	}
	if r.Asked {
		fmt.Fprintf(w, "\nIt is looked for only on request: seamwarden check --also %s\n", r.ID)
	}
	example(w, "Here it is found:", r.FailingFiles())
	example(w, "Here it is not:", r.PassingFiles())
	return nil
}

func noSuchFinding(name, id string) error {
	var ids []string
	for _, r := range check.Rules() {
		ids = append(ids, r.ID)
	}
	sentence := fmt.Sprintf("there is no finding %q", name)
	if guess := finding.Nearest(id, ids); guess != "" {
		return meant(sentence, guess)
	}
	return fmt.Errorf("%s; seamwarden explain lists them", sentence)
}

// example prints the files of a pattern's folder, set in from the text; the name
// of each stands above it if there are several.
func example(w io.Writer, title string, files map[string]string) {
	if strings.TrimSpace(files[compiler.Root]) == "" {
		return
	}
	fmt.Fprintf(w, "\n%s\n", title)
	names := slices.Sorted(maps.Keys(files))
	at := slices.Index(names, compiler.Root)
	names = slices.Insert(slices.Delete(names, at, at+1), 0, compiler.Root)
	for _, name := range names {
		if len(names) > 1 {
			fmt.Fprintf(w, "\n  %s:", name)
		}
		fmt.Fprintln(w)
		for _, line := range strings.Split(strings.Trim(files[name], "\n"), "\n") {
			fmt.Fprintln(w, strings.TrimRight("    "+line, " \t\r"))
		}
	}
}

// listRules prints every rule in one line, by category.
func listRules(w io.Writer) {
	var categories []string
	byCategory := map[string][]*check.Rule{}
	longest := 0
	for _, r := range check.Rules() {
		if byCategory[r.Category] == nil {
			categories = append(categories, r.Category)
		}
		byCategory[r.Category] = append(byCategory[r.Category], r)
		longest = max(longest, len(r.ID))
	}
	for i, c := range slices.Sorted(slices.Values(categories)) {
		if i > 0 {
			fmt.Fprintln(w)
		}
		fmt.Fprintln(w, c)
		for _, r := range byCategory[c] {
			fmt.Fprintf(w, "  %-*s  %s\n", longest, r.ID, r.Purpose)
		}
	}
}
