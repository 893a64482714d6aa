package assembly

import (
	"seamwarden/compiler/condition"
	"seamwarden/compiler/model"
)

// Snapshot is what a maker has in her hands after a step, for one garment. Lists
// are in the order of the pattern.
type Snapshot struct {
	Step       *model.Step // nil before the first
	Assemblies []Assembly
	Loose      []*model.Instance // cut, and nothing sewn to them yet
	Unfused    []*model.Instance // interfacing that is not put in yet
	Openings   []*model.Gap      // left for turning and not closed yet
	Started    []*model.Join     // seams of which a stretch is sewn, and the rest not yet
	Unpressed  []Waiting         // seams that are sewn, and pressed only in a later step
	Unfinished []Waiting         // the same for the finish of their allowances
	Stock      []Taken
}

// Assembly is what hangs together: cut parts, and the edges of them that lie
// open. One part alone is an assembly once something is sewn on it.
type Assembly struct {
	Parts    []*model.Instance
	Separate bool // an item of its own, such as a belt
	Rounds   []Round
}

// Round is a run of open edges, each beginning where the one before it ends.
// Closed says that the last one ends where the first begins; if not, the run ends
// in a seam that more than two layers meet in. A flat assembly has one round, a
// tube two.
type Round struct {
	Edges  []OpenEdge
	Closed bool
}

// OpenEdge is an edge of a cut part that is not sewn to anything, or a stretch of
// one. From and To are then the names of what it lies between, a mark or the edge
// that begins there; both are "" for the whole edge.
type OpenEdge struct {
	model.EdgeUse
	From, To string
	Rim      Rim
	By       *model.Op // what made its rim so; nil as it was cut
}

// Rim is what has become of an open edge.
type Rim uint8

// The kinds of rim, from the one that needs most to those that need nothing more.
const (
	Raw         Rim = iota
	FinishedRim     // kept from fraying
	PressedRim      // pressed or turned under, and not sewn yet
	LeftRaw         // left raw, or selvage, as the pattern says
	HemmedRim
	BoundRim
	StitchedRim // stitched down, or laid on another part and sewn there
)

// Open reports whether an edge with this rim still waits for something.
func (r Rim) Open() bool { return r <= PressedRim }

// Waiting is a seam line that was sewn, and the operation that will press or
// finish it.
type Waiting struct {
	Join *model.Join
	By   *model.Op
}

// Taken is how many of a notion, one half of it, or a part of a strip the steps
// have used so far, of how many they use in all.
type Taken struct {
	StockKey
	Used, Of int
}

// After plays the steps of one garment up to the end of a step, nil for before
// the first. Every variable of the pattern must have its value in a.
func After(p *model.Pattern, a condition.Assignment, step *model.Step) Snapshot {
	t := newWorktable(p, a)
	now, later := t.divided(step)
	for _, op := range now {
		t.do(op)
	}
	s := Snapshot{Step: step, Started: t.started(), Openings: t.openings(), Unfused: t.unfused()}
	s.Unpressed = t.waiting(later, t.pressed, func(op *model.Op) bool { return op.Verb == "press" || op.Verb == "steam" })
	s.Unfinished = t.waiting(later, t.finished, func(op *model.Op) bool { return finishes[op.Verb] })
	s.Assemblies, s.Loose = t.assemblies()
	s.Stock = t.stock(now)
	return s
}

// finishes are the verbs that keep the allowances of a seam from fraying.
var finishes = map[string]bool{"finish": true, "bind": true, "cover": true, "fell": true}

// divided gives the operations of this garment up to the end of a step, and those
// after it.
func (t *worktable) divided(step *model.Step) (now, later []*model.Op) {
	past := step == nil
	for _, s := range t.Steps() {
		for _, i := range s.Items {
			op, ok := i.(*model.Op)
			switch {
			case !ok || !t.holds(op.Cond):
			case past:
				later = append(later, op)
			default:
				now = append(now, op)
			}
		}
		past = past || s == step
	}
	return
}

// started lists the seam lines that are sewn in part.
func (t *worktable) started() (all []*model.Join) {
	for _, s := range t.Seams {
		for _, j := range s.Copies {
			if done, of := t.progress(j); done > 0 && done < of {
				all = append(all, j)
			}
		}
	}
	return
}

// openings lists what has been left open on purpose, and not been closed.
func (t *worktable) openings() (all []*model.Gap) {
	for _, g := range t.Gaps {
		if t.gaps[g] {
			all = append(all, g)
		}
	}
	return
}

// unfused lists the interfacing that no step has put in.
func (t *worktable) unfused() (all []*model.Instance) {
	for _, p := range t.Pieces {
		for _, i := range p.Interfacings() {
			if t.holds(i.Cond) && !t.fused[i] {
				all = append(all, i)
			}
		}
	}
	return
}

// waiting lists the seam lines that are sewn and to which something is done only
// later. What the pattern says of all its seams is done as each is sewn.
func (t *worktable) waiting(later []*model.Op, done map[*model.Join]bool, does func(*model.Op) bool) (all []Waiting) {
	for _, s := range t.Seams {
		for _, j := range s.Copies {
			if n, of := t.progress(j); n == 0 || n < of || done[j] {
				continue
			}
			if op := t.firstOn(j, later, does); op != nil {
				all = append(all, Waiting{j, op})
			}
		}
	}
	return
}

// firstOn finds the first operation of a kind on a seam line.
func (t *worktable) firstOn(j *model.Join, ops []*model.Op, does func(*model.Op) bool) (found *model.Op) {
	for _, op := range ops {
		if found != nil || !does(op) {
			continue
		}
		t.each(op.Objects, func(o *model.Target) {
			if o.Seam == j.Seam && SewnBy(op, o, j) {
				found = op
			}
		})
	}
	return
}

// stock counts what the steps take, and have taken.
func (t *worktable) stock(now []*model.Op) (all []Taken) {
	done := map[*model.Op]bool{}
	for _, op := range now {
		done[op] = true
	}
	facts := Gather(t.Pattern)
	for _, k := range facts.StockInOrder() {
		x := Taken{StockKey: k}
		for _, a := range facts.Stock[k] {
			if !t.holds(a.Cond) {
				continue
			}
			x.Of += a.N
			if done[a.Op] {
				x.Used += a.N
			}
		}
		if x.Of > 0 {
			all = append(all, x)
		}
	}
	return
}
