package main

import (
	"errors"
	"fmt"
	"slices"
	"strings"

	"github.com/spf13/cobra"
	"github.com/spf13/pflag"

	"seamwarden/dsl/finding"
)

// Mistakes on the command line: each gives one plain line that says what was
// meant, if that can be guessed.

// meant adds a guess to a sentence.
func meant(sentence, guess string) error {
	if guess != "" {
		sentence += "; did you mean " + guess + "?"
	}
	return errors.New(sentence)
}

// noSuchCommand refuses words after the program's name that are no command.
func noSuchCommand(cmd *cobra.Command, args []string) error {
	if len(args) == 0 {
		return nil
	}
	guess := nearestCommand(cmd, args[0])
	switch {
	case guess == "" && isPattern(args[0]):
		guess = "seamwarden check " + args[0]
	case guess == "":
		return fmt.Errorf("there is no command %q; seamwarden --help lists them", args[0])
	}
	return meant(fmt.Sprintf("there is no command %q", args[0]), guess)
}

func nearestCommand(parent *cobra.Command, word string) string {
	var names []string
	for _, c := range parent.Commands() {
		if c.IsAvailableCommand() {
			names = append(names, c.Name())
		}
	}
	other := map[string]string{"format": "fmt", "new": "init", "create": "init", "start": "init", "lint": "check", "test": "check",
		"make": "build", "render": "build", "pdf": "build --only pdf", "html": "build --only html", "print": "build", "why": "explain", "version": "--version"}
	if name := other[strings.ToLower(word)]; name != "" {
		return name
	}
	return finding.Nearest(word, names)
}

// takes limits the number of words after a command; what says what they are, and
// the command's example shows how they stand.
func takes(low, high int, what string) cobra.PositionalArgs {
	return func(cmd *cobra.Command, args []string) error {
		if len(args) >= low && (high < 0 || len(args) <= high) {
			return nil
		}
		example, _, _ := strings.Cut(strings.TrimSpace(cmd.Example), "\n")
		return fmt.Errorf("%s takes %s, as in: %s", cmd.Name(), what, example)
	}
}

// flagMistake words what is wrong with a flag.
func flagMistake(cmd *cobra.Command, err error) error {
	var unknown *pflag.NotExistError
	var empty *pflag.ValueRequiredError
	var bad *pflag.InvalidValueError
	switch {
	case errors.As(err, &unknown):
		name := "--" + unknown.GetSpecifiedName()
		word := unknown.GetSpecifiedName()
		if group := unknown.GetSpecifiedShortnames(); group != "" {
			name, word = "-"+group, group
		}
		return meant(fmt.Sprintf("%s has no flag %s", cmd.CommandPath(), name), nearestFlag(cmd, word))
	case errors.As(err, &empty):
		return noValue(empty.GetFlag())
	case errors.As(err, &bad) && bad.GetFlag().Value.Type() == "bool":
		return fmt.Errorf("--%s stands alone, without a value", bad.GetFlag().Name)
	case errors.As(err, &bad):
		return fmt.Errorf("--%s takes %w", bad.GetFlag().Name, errors.Unwrap(bad))
	}
	return err
}

// noValue says what a flag waits for.
func noValue(f *pflag.Flag) error {
	if p, ok := f.Value.(*pick); ok {
		return fmt.Errorf("--%s needs a value: %s", f.Name, spoken(p.allowed, "or"))
	}
	name, _ := pflag.UnquoteUsage(f)
	return fmt.Errorf("--%s needs a value: the %s", f.Name, name)
}

func nearestFlag(cmd *cobra.Command, word string) string {
	var names []string
	cmd.Flags().VisitAll(func(f *pflag.Flag) { names = append(names, f.Name) })
	if strings.EqualFold(word, "colour") {
		return "--color"
	}
	if name := finding.Nearest(word, names); name != "" {
		return "--" + name
	}
	return ""
}

// pick is a flag that takes one or several of a few words, with commas between
// them or given again.
type pick struct {
	allowed, picked []string
	one, given      bool
}

// Set takes what was written after the flag.
func (p *pick) Set(s string) error {
	if !p.given {
		p.picked, p.given = nil, true
	}
	for _, word := range strings.Split(s, ",") {
		w := strings.ToLower(strings.TrimSpace(word))
		if !slices.Contains(p.allowed, w) {
			return meant(fmt.Sprintf("%s, not %q", spoken(p.allowed, "or"), word), finding.Nearest(w, p.allowed))
		}
		if !slices.Contains(p.picked, w) {
			p.picked = append(p.picked, w)
		}
	}
	if p.one && len(p.picked) > 1 {
		return fmt.Errorf("one of %s", spoken(p.allowed, "or"))
	}
	return nil
}

func (p *pick) String() string { return strings.Join(p.picked, ",") }

// Type is what the help calls the value.
func (p *pick) Type() string { return "NAME" }

// has reports whether a word is picked.
func (p *pick) has(word string) bool { return slices.Contains(p.picked, word) }

// spoken joins words as in speech: "a, b or c".
func spoken(words []string, last string) string {
	if len(words) < 2 {
		return strings.Join(words, "")
	}
	n := len(words) - 1
	return strings.Join(words[:n], ", ") + " " + last + " " + words[n]
}
