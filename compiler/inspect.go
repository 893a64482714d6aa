package compiler

import (
	"fmt"
	"slices"
	"strconv"

	"seamwarden/compiler/assembly"
	"seamwarden/compiler/check"
	"seamwarden/compiler/condition"
	"seamwarden/compiler/model"
	"seamwarden/compiler/wording"
	"seamwarden/dsl/finding"
)

// Inspect words what is in a maker's hands after a step, by its name or by its
// number among the steps of the garments that are left to choose from; "" is the
// last step, "0" is before the first. Of what the choice leaves open, the plainest
// garment that has the step is taken; guessed says that there was a choice. The
// error says in plain words why there is no such garment or step. sources adds
// the names of the pattern's source.
func Inspect(p *model.Pattern, chosen condition.Assignment, after string, sources bool) (seen *wording.Inspection, guessed bool, err error) {
	valid := p.Space.And(p.Valid, chosenCond(p, chosen))
	steps, numbers := stepsFor(p, valid)
	step, err := stepNamed(p, steps, after)
	if err != nil {
		return nil, false, err
	}
	if step != nil {
		within := p.Space.And(valid, step.Cond)
		if within == condition.False {
			return nil, false, fmt.Errorf("the step %s is only there %s", stepName(step), p.Space.Words(p.Space.Smallest(step.Cond, p.Valid), check.Names(p)))
		}
		valid = within
	}
	garment, ok := p.Space.Witness(valid)
	if !ok {
		return nil, false, fmt.Errorf("too many choices meet here to find a garment; choose a view and options")
	}
	for v, value := range garment {
		x := p.Space.Var(condition.VarID(v))
		open := chosen[v] < 0 && len(x.Values) > 1
		guessed = guessed || open && x.Kind != condition.Size
		if open && x.Kind == condition.Size {
			garment[v] = -1 // no step depends on it, so it is not told
		} else if chosen[v] >= 0 {
			garment[v] = value
		}
	}
	seen, err = wording.Inspect(p, garment, assembly.After(p, garment, step), numbers, sources)
	return seen, guessed, err
}

// chosenCond is where a garment is as it was chosen.
func chosenCond(p *model.Pattern, chosen condition.Assignment) condition.Cond {
	c := condition.True
	for v, value := range chosen {
		if value >= 0 {
			c = p.Space.And(c, p.Space.Is(condition.VarID(v), value))
		}
	}
	return c
}

// stepsFor lists the steps of the garments that are left, and numbers them as
// their booklet does.
func stepsFor(p *model.Pattern, valid condition.Cond) (steps []*model.Step, numbers map[*model.Step]int) {
	numbers = map[*model.Step]int{}
	for _, s := range p.Steps() {
		if p.Space.Overlaps(s.Cond, valid) {
			steps = append(steps, s)
			numbers[s] = len(steps)
		}
	}
	return
}

// stepNamed finds a step; nil for before the first.
func stepNamed(p *model.Pattern, steps []*model.Step, name string) (*model.Step, error) {
	if len(steps) == 0 {
		return nil, fmt.Errorf("this pattern has no step for such a garment")
	}
	if name == "" {
		return steps[len(steps)-1], nil
	}
	if n, err := strconv.Atoi(name); err == nil {
		switch {
		case n == 0:
			return nil, nil
		case n < 0 || n > len(steps):
			return nil, fmt.Errorf("there is no step %d; such a garment has the steps 1 to %d", n, len(steps))
		}
		return steps[n-1], nil
	}
	all := p.Steps()
	if at := slices.IndexFunc(all, func(s *model.Step) bool { return s.ID == name || s.Title.Text == name }); at >= 0 {
		return all[at], nil
	}
	if near := finding.Nearest(name, names(all, func(s *model.Step) string { return s.ID })); near != "" {
		return nil, fmt.Errorf("this pattern has no step %q; did you mean %s?", name, near)
	}
	return nil, fmt.Errorf("this pattern has no step %q; there is %s to %s, or a number", name, stepName(steps[0]), stepName(steps[len(steps)-1]))
}

// stepName is what a step is called on the command line.
func stepName(s *model.Step) string {
	if s.ID != "" {
		return s.ID
	}
	return strconv.Quote(s.Title.Text)
}
