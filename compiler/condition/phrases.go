package condition

import (
	"slices"
	"strconv"
	"strings"
)

// optionWords returns "with side pockets and without a lining".
func (s *Space) optionWords(options Cube, names Names) string {
	var with, without []string
	for _, lit := range options {
		name := s.optionName(lit.Var, names)
		if lit.Values[0] == With {
			with = append(with, name)
		} else {
			without = append(without, name)
		}
	}
	var parts []string
	if len(with) > 0 {
		parts = append(parts, "with "+list(with, "and"))
	}
	if len(without) > 0 {
		parts = append(parts, "without "+list(without, "or"))
	}
	return strings.Join(parts, " and ")
}

// valueWords returns where a view or a size has one of the values: "in view
// B", "in views A and C", "in every view but A", "in sizes 8 to 12".
func (s *Space) valueWords(lit Literal, noun string, names Names) string {
	if others := s.others(lit); len(others) == 1 && len(lit.Values) > 2 && !s.isRun(lit) {
		return "in every " + noun + " but " + s.label(lit.Var, others[0], names)
	}
	var items []string
	for _, run := range s.runs(lit) {
		first, last := s.label(lit.Var, run[0], names), s.label(lit.Var, run[len(run)-1], names)
		if len(run) > 2 {
			items = append(items, first+" to "+last)
			continue
		}
		for _, value := range run {
			items = append(items, s.label(lit.Var, value, names))
		}
	}
	if len(lit.Values) > 1 {
		noun += "s"
	}
	return "in " + noun + " " + list(items, "and")
}

// choiceWords returns "when the band is bound", or "unless" it is the one
// thing that it must not be.
func (s *Space) choiceWords(lit Literal, names Names) string {
	if others := s.others(lit); len(others) == 1 && len(lit.Values) > 2 {
		return "unless " + s.clause(lit.Var, others[0], names)
	}
	var clauses []string
	for _, value := range lit.Values {
		clauses = append(clauses, s.clause(lit.Var, value, names))
	}
	return "when " + list(clauses, "or")
}

// others returns the values that a literal leaves out.
func (s *Space) others(lit Literal) []int {
	var others []int
	for value := range s.vars[lit.Var].Values {
		if !slices.Contains(lit.Values, value) {
			others = append(others, value)
		}
	}
	return others
}

// isRun says whether the values are sizes that follow each other.
func (s *Space) isRun(lit Literal) bool {
	return s.vars[lit.Var].Kind == Size && len(s.runs(lit)) == 1
}

// runs parts the values into those that follow each other. Only sizes have an
// order; views stand alone.
func (s *Space) runs(lit Literal) [][]int {
	var runs [][]int
	for i, value := range lit.Values {
		if i > 0 && s.vars[lit.Var].Kind == Size && value == lit.Values[i-1]+1 {
			runs[len(runs)-1] = append(runs[len(runs)-1], value)
			continue
		}
		runs = append(runs, []int{value})
	}
	return runs
}

// label returns the word for a view or a size.
func (s *Space) label(v VarID, value int, names Names) string {
	name := names.Size
	if s.vars[v].Kind == View {
		name = names.View
	}
	if name != nil {
		if text := name(v, value); text != "" {
			return text
		}
	}
	return s.plain(v, value)
}

// plain returns a value as the Space has it, its number if it has no name.
func (s *Space) plain(v VarID, value int) string {
	if text := s.vars[v].Values[value]; text != "" {
		return text
	}
	return strconv.Itoa(value + 1)
}

func (s *Space) optionName(v VarID, names Names) string {
	if names.Option != nil {
		if text := names.Option(v); text != "" {
			return text
		}
	}
	return s.vars[v].Name
}

// clause returns a choice with its verb: "the band is bound".
func (s *Space) clause(v VarID, value int, names Names) string {
	if names.Choice != nil {
		if text := names.Choice(v, value); text != "" {
			return text
		}
	}
	return s.vars[v].Name + " is " + s.plain(v, value)
}

// chosen returns a choice without its verb: "band bound with bias tape".
func (s *Space) chosen(v VarID, value int, names Names) string {
	if names.Chosen != nil {
		if text := names.Chosen(v, value); text != "" {
			return text
		}
	}
	return s.vars[v].Name + " " + s.plain(v, value)
}

// list returns "a", "a and b", "a, b and c".
func list(items []string, last string) string {
	if len(items) < 2 {
		return strings.Join(items, "")
	}
	return strings.Join(items[:len(items)-1], ", ") + " " + last + " " + items[len(items)-1]
}
