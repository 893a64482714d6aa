// Package wanted says which lays a pattern needs.
//
// In: a [model.Pattern] whose outlines have been read. Out: for each fabric and
// interfacing the distinct lays: in which garments, in which size and width, with or
// without nap, and what is laid; and what cannot be laid, and why. It finds no lay.
//
// Two garments need the same lay if the same parts are cut from a cloth for both, so an
// option that changes nothing there is not told apart; nor is one whose parts take so
// little cloth that nobody could buy so much less. The garments are parted by the
// conditions of the cut lines, never listed one by one.
package wanted

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"seamwarden/compiler/condition"
	"seamwarden/compiler/model"
	"seamwarden/dsl/finding"
)

// List is what a pattern needs. Lays of one material, width and nap stand together,
// those of one condition by size.
type List struct {
	Lays []*model.Laying
	Not  []NotLaid
}

// NotLaid says why the lays of a material are not known in some garments, or are not
// told apart.
type NotLaid struct {
	Material *model.Material
	Cond     condition.Cond
	Why      string
	Span     finding.Span
}

// What says what is not known: "how the lining is laid in view B, since …".
func (n NotLaid) What(where string) string {
	if where != "" {
		where = " " + where
	}
	return fmt.Sprintf("how the %s is laid%s, since %s", Lower(n.Material.Name), where, n.Why)
}

// mostSets is how many different sets of pieces are told apart for a material; with
// more, the rest is laid along for garments that go without it (a limit of patience,
// not of the trade).
const mostSets = 48

// alongMM is how much cloth the parts may fill, in millimetres of its length, that are
// laid along for garments that go without them: the step in which cloth is bought.
// Parts that no garment has together may fill alternativeMM.
const (
	alongMM       = 100
	alternativeMM = 20
)

// Sets parts the garments by what is cut for them; there are none if no piece has an
// outline. words says in which garments a condition holds, "" for all. It uses the
// pattern's Space, and must not run beside anything else that does.
func Sets(p *model.Pattern, words func(condition.Cond) string) *Plan {
	plan := &Plan{pattern: p}
	if !drawn(p) {
		return plan
	}
	for _, m := range p.Materials {
		plan.material(m, words)
	}
	return plan
}

// drawn reports whether any piece has an outline that could be read.
func drawn(p *model.Pattern) bool {
	for _, x := range p.Pieces {
		for _, d := range x.Outlines {
			if d.Art != nil {
				return true
			}
		}
	}
	return false
}

// Plan is which sets of parts are cut from which material, before any of them has been
// drawn out in a size.
type Plan struct {
	pattern *model.Pattern
	ops     []*model.Op // of all steps, once they are needed
	sets    []*set
	not     []NotLaid
}

// set is the parts that are cut from a material in the garments of a condition.
type set struct {
	material *model.Material
	cond     condition.Cond
	in       string // the garments in words, "" for all
	sizes    []int
	parts    []*part
	all      condition.Cond // the garments of the condition that have every part
	spare    float64        // the area of parts that not every garment has, in square millimetres
}

// mayTake reports whether a part that some garments go without can be laid along for
// all of a set, on cloth of a width.
func (s *set) mayTake(space *condition.Space, x *part, width float64) bool {
	along := float64(alongMM)
	if space.And(s.all, x.cond) == condition.False {
		along = alternativeMM
	}
	return len(s.parts) > 0 && s.spare+x.area() <= along*width
}

// material parts the garments by what is cut from a material.
func (plan *Plan) material(m *model.Material, words func(condition.Cond) string) {
	p := plan.pattern
	parts := plan.partsOf(m)
	within := p.Space.And(p.Valid, m.Cond)
	within = plan.without(m, parts, within)
	if len(m.Widths) == 0 && len(parts) > 0 {
		plan.not = append(plan.not, NotLaid{m, within, "its widths are not said", m.Span})
		return
	}
	narrow := narrowest(m)
	sets := divide(p.Space, within, parts, narrow)
	if slices.ContainsFunc(sets, func(s *set) bool { return s.spare > narrow*alongMM }) {
		plan.not = append(plan.not, NotLaid{m, within, fmt.Sprintf("more than %d different sets of pieces are cut from it, so that pieces are laid along for garments that go without them", mostSets), m.Span})
	}
	for _, s := range sets {
		s.material, s.in = m, words(s.cond)
		p.InSizes(func(i int) bool {
			if i < 0 || p.Space.Overlaps(s.cond, plan.size(i)) {
				s.sizes = append(s.sizes, i)
			}
			return false
		})
	}
	plan.sets = append(plan.sets, sets...)
}

// without leaves out the garments in which some part cannot be drawn, and says why.
func (plan *Plan) without(m *model.Material, parts []*part, within condition.Cond) condition.Cond {
	space := plan.pattern.Space
	undrawn := NotLaid{Material: m}
	var names []string
	for _, x := range parts {
		c := space.And(within, x.cond)
		if x.why == "" || c == condition.False {
			continue
		}
		if x.why != noOutline {
			plan.not = append(plan.not, NotLaid{m, c, x.why, x.span})
			continue
		}
		if undrawn.Cond = space.Or(undrawn.Cond, c); len(names) == 0 {
			undrawn.Span = x.span
		}
		if name := "the " + Lower(x.name); !slices.Contains(names, name) {
			names = append(names, name)
		}
	}
	if len(names) > 0 {
		undrawn.Why = has(names, "no outline")
		plan.not = append(plan.not, undrawn)
	}
	for _, x := range parts {
		if x.why != "" {
			within = space.Diff(within, x.cond)
		}
	}
	return within
}

// has words what a few things have, or many.
func has(names []string, what string) string {
	const most = 3
	switch n := len(names); {
	case n == 1:
		return names[0] + " has " + what
	case n > most:
		return fmt.Sprintf("%s and %d more have %s", strings.Join(names[:most], ", "), n-most, what)
	default:
		return strings.Join(names[:n-1], ", ") + " and " + names[n-1] + " have " + what
	}
}

// size is the condition of the size number i.
func (plan *Plan) size(i int) condition.Cond {
	return plan.pattern.InSizes(func(k int) bool { return k == i })
}

func narrowest(m *model.Material) float64 {
	least := math.Inf(1)
	for _, w := range m.Widths {
		least = min(least, w.Length.MM())
	}
	return least
}

// divide parts the garments of a condition by the parts that are cut for them. Small ones
// are laid along where some garments go without them, and all once there are too many
// sets.
func divide(space *condition.Space, within condition.Cond, parts []*part, width float64) []*set {
	sets := []*set{{cond: within, all: within}}
	for _, x := range byArea(parts) {
		var next []*set
		for i, s := range sets {
			has, lacks := space.And(s.cond, x.cond), space.Diff(s.cond, x.cond)
			many := len(next)+len(sets)-i+1 > mostSets || has == condition.Undecided || lacks == condition.Undecided
			switch {
			case has == condition.False:
				next = append(next, s)
			case lacks == condition.False:
				next = append(next, s.with(space, x, s.cond, 0))
			case many, s.mayTake(space, x, width):
				next = append(next, s.with(space, x, s.cond, x.area()))
			default:
				next = append(next, s.with(space, x, has, 0), &set{cond: lacks, all: space.And(s.all, lacks), parts: s.parts, spare: s.spare})
			}
		}
		sets = next
	}
	sets = slices.DeleteFunc(merged(space, sets), func(s *set) bool { return len(s.parts) == 0 || s.cond == condition.False })
	slices.SortStableFunc(sets, func(a, b *set) int {
		x, _ := space.Witness(a.cond)
		y, _ := space.Witness(b.cond)
		return slices.Compare(x, y) // view by view
	})
	return sets
}

func (s *set) with(space *condition.Space, x *part, cond condition.Cond, spare float64) *set {
	all := space.And(s.all, space.And(cond, x.cond))
	return &set{cond: cond, all: all, parts: append(append([]*part(nil), s.parts...), x), spare: s.spare + spare}
}

// merged puts sets together that are alike though other lines say so.
func merged(space *condition.Space, sets []*set) (out []*set) {
	known := map[string]*set{}
	for _, s := range sets {
		key := fmt.Sprint(s.spare) + alike(s.parts)
		if first := known[key]; first != nil {
			first.cond = space.Or(first.cond, s.cond)
			continue
		}
		known[key] = s
		out = append(out, s)
	}
	return
}

// Not says what is not laid, as far as it is known before anything is drawn out.
func (plan *Plan) Not() []NotLaid { return plan.not }

// Ready reports whether there is something to lay, and everything of it can be.
func (plan *Plan) Ready() bool { return len(plan.sets) > 0 && len(plan.not) == 0 }

// Draw draws out every set in its sizes, widths and naps. It needs no conditions, and
// may run beside what does.
func (plan *Plan) Draw() *List {
	list := &List{Not: plan.not}
	d := &drawer{pattern: plan.pattern, pieces: map[drawnKey]drawnPiece{}}
	for _, s := range plan.sets {
		for _, width := range s.material.Widths {
			for _, nap := range s.material.Naps() {
				plan.lays(list, d, s, width, nap)
			}
		}
	}
	return list
}

// lays adds the lays of a set in one width, by size.
func (plan *Plan) lays(list *List, d *drawer, s *set, width model.Amount, nap bool) {
	for _, i := range s.sizes {
		l := &model.Laying{Material: s.material, Width: width, Nap: nap, Cond: s.cond, Size: i, SpareMM: s.spare / width.Length.MM()}
		why := ""
		if l.Job, why = d.job(s, width, nap, i); why != "" {
			if not := (NotLaid{s.material, s.material.Cond, why, s.material.Span}); !slices.Contains(list.Not, not) {
				list.Not = append(list.Not, not)
			}
			continue
		}
		l.Label = plan.label(s, width, nap, i)
		list.Lays = append(list.Lays, l)
	}
}

// label names a lay in words that stay the same while nothing about the choice does.
func (plan *Plan) label(s *set, width model.Amount, nap bool, size int) string {
	parts := []string{s.material.ID, width.String()}
	if nap {
		parts = append(parts, "with nap")
	}
	if s.in != "" {
		parts = append(parts, s.in)
	}
	if size >= 0 {
		parts = append(parts, "size "+plan.pattern.Sizes.Sizes[size])
	}
	return strings.Join(parts, ", ")
}
