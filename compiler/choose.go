package compiler

import (
	"fmt"
	"sort"
	"strings"

	"seamwarden/compiler/check"
	"seamwarden/compiler/condition"
	"seamwarden/compiler/model"
	"seamwarden/dsl/finding"
)

// Choice is what a reader of a booklet has decided, in the names of the source.
// What is empty is left open.
type Choice struct {
	View, Size    string
	With, Without []string          // options
	Ways          map[string]string // choice -> way
}

// Choose turns a choice into values for a pattern's variables. The error names
// what the pattern does not have, in plain words.
func Choose(p *model.Pattern, c Choice) (condition.Assignment, error) {
	a := make(condition.Assignment, p.Space.Vars())
	for i := range a {
		a[i] = -1
	}
	set := func(kind condition.Kind, name string, value int) {
		for v := range condition.VarID(p.Space.Vars()) {
			if x := p.Space.Var(v); x.Kind == kind && (name == "" || x.Name == name) {
				a[v] = value
			}
		}
	}
	if c.View != "" {
		i, err := index("view", c.View, names(p.Views, func(v *model.View) string { return v.ID }))
		if err != nil {
			return nil, err
		}
		set(condition.View, "", i)
	}
	if c.Size != "" {
		var sizes []string
		if p.Sizes != nil {
			sizes = p.Sizes.Sizes
		}
		i, err := index("size", c.Size, sizes)
		if err != nil {
			return nil, err
		}
		set(condition.Size, "", i)
	}
	if err := chooseOptions(p, c, set); err != nil {
		return nil, err
	}
	if err := chooseWays(p, c, set); err != nil {
		return nil, err
	}
	if p.Space.Given(p.Valid, a) == condition.False {
		return nil, fmt.Errorf("this pattern has no such garment: %s", p.Space.WordsFor(a, wordsOf(p), true))
	}
	return a, nil
}

func chooseOptions(p *model.Pattern, c Choice, set func(condition.Kind, string, int)) error {
	known := names(p.Options, func(o *model.Option) string { return o.ID })
	seen := map[string]int{}
	for value, list := range [][]string{condition.Without: c.Without, condition.With: c.With} {
		for _, id := range list {
			if _, err := index("option", id, known); err != nil {
				return err
			}
			if old, ok := seen[id]; ok && old != value {
				return fmt.Errorf("the option %s is asked for both with and without", id)
			}
			seen[id] = value
			set(condition.Option, id, value)
		}
	}
	return nil
}

func chooseWays(p *model.Pattern, c Choice, set func(condition.Kind, string, int)) error {
	for _, id := range sortedKeys(c.Ways) {
		i, err := index("choice", id, names(p.Choices, func(o *model.Choice) string { return o.ID }))
		if err != nil {
			return err
		}
		v, err := index("way of "+id, c.Ways[id], names(p.Choices[i].Values, func(d model.Decl) string { return d.ID }))
		if err != nil {
			return err
		}
		set(condition.Choice, id, v)
	}
	return nil
}

func names[T any](list []T, id func(T) string) (all []string) {
	for _, x := range list {
		all = append(all, id(x))
	}
	return
}

func sortedKeys[T any](m map[string]T) (all []string) {
	for k := range m {
		all = append(all, k)
	}
	sort.Strings(all)
	return
}

// index finds a name in a list, or says what there is instead.
func index(what, name string, known []string) (int, error) {
	for i, k := range known {
		if k == name {
			return i, nil
		}
	}
	for i, k := range known {
		if strings.EqualFold(k, name) {
			return i, nil
		}
	}
	switch near := finding.Nearest(name, known); {
	case len(known) == 0:
		return 0, fmt.Errorf("this pattern has no %s, so %q cannot be chosen", what, name)
	case near != "":
		return 0, fmt.Errorf("this pattern has no %s %q; did you mean %s?", what, name, near)
	}
	return 0, fmt.Errorf("this pattern has no %s %q; there is %s", what, name, strings.Join(known, ", "))
}

func wordsOf(p *model.Pattern) condition.Names { return check.Names(p) }
