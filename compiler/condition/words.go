package condition

import (
	"fmt"
	"slices"
	"strings"
)

// Names gives the words for values. A function that is nil, or that returns
// nothing, leaves the name and the value as they are in the Space.
type Names struct {
	View   func(v VarID, value int) string // "A"
	Option func(v VarID) string            // "side pockets"
	Choice func(v VarID, value int) string // a clause: "the band is bound"
	Chosen func(v VarID, value int) string // without a verb: "band bound with bias tape"
	Size   func(v VarID, value int) string // "12"
}

// mostAlternatives is how many alternatives a reader can keep apart.
const mostAlternatives = 3

// Words returns a description in English, to stand after a sentence: "in view
// B with side pockets". It returns nothing for what always holds. More than
// three alternatives are counted instead, with an example.
func (s *Space) Words(d Description, names Names) string {
	switch {
	case d.Undecided:
		return "in some combinations (there are too many to say which)"
	case d.Always:
		return ""
	case d.Witness == nil:
		return "in no combination"
	case len(d.Cubes) == 0 || len(d.Cubes) > mostAlternatives:
		return s.counted(d, names)
	}
	alternatives := make([]string, len(d.Cubes))
	for i, cube := range d.Cubes {
		alternatives[i] = s.cubeWords(cube, names)
	}
	return strings.Join(alternatives, "; or ")
}

// counted says in how many combinations it holds, and gives one.
func (s *Space) counted(d Description, names Names) string {
	example := make(Assignment, len(d.Witness))
	for i := range example {
		example[i] = -1
	}
	for _, v := range d.Vars {
		example[v] = d.Witness[v]
	}
	number := "in some combinations"
	if d.Count != nil && d.Of != nil {
		number = fmt.Sprintf("in %d of %d combinations", d.Count, d.Of)
	}
	return number + ", for example " + s.WordsFor(example, names, true)
}

// WordsFor returns one garment in English: "view B, with side pockets, band
// bound with bias tape, size 8". What is not known is not said, and the size
// only if it is asked for.
func (s *Space) WordsFor(a Assignment, names Names, withSize bool) string {
	var views, choices, sizes []string
	options := Cube{}
	for _, v := range s.inOrder() {
		value := a.of(v)
		if value < 0 || value >= len(s.vars[v].Values) {
			continue
		}
		switch s.vars[v].Kind {
		case View:
			views = append(views, "view "+s.label(v, value, names))
		case Option:
			options = append(options, Literal{Var: v, Values: []int{value}})
		case Choice:
			choices = append(choices, s.chosen(v, value, names))
		case Size:
			sizes = append(sizes, "size "+s.label(v, value, names))
		}
	}
	if !withSize {
		sizes = nil
	}
	parts := append(views, s.optionWords(options, names))
	return strings.Join(said(append(append(parts, choices...), sizes...)), ", ")
}

// said leaves out the parts that say nothing.
func said(parts []string) []string {
	return slices.DeleteFunc(parts, func(part string) bool { return part == "" })
}

// cubeWords returns one alternative: views, options, sizes, then choices.
func (s *Space) cubeWords(cube Cube, names Names) string {
	var views, sizes, choices []string
	options := Cube{}
	for _, lit := range cube {
		switch s.vars[lit.Var].Kind {
		case View:
			views = append(views, s.valueWords(lit, "view", names))
		case Option:
			options = append(options, lit)
		case Size:
			sizes = append(sizes, s.valueWords(lit, "size", names))
		case Choice:
			choices = append(choices, s.choiceWords(lit, names))
		}
	}
	parts := append(views, s.optionWords(options, names))
	parts = said(append(append(parts, sizes...), strings.Join(choices, " and ")))
	if len(parts) < 3 {
		return strings.Join(parts, " ")
	}
	return parts[0] + " " + strings.Join(parts[1:], ", ")
}
