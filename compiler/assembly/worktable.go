package assembly

import (
	"seamwarden/compiler/condition"
	"seamwarden/compiler/model"
)

// worktable is one garment while it is made: what hangs together, what is sewn,
// and the rims of all that is open.
type worktable struct {
	*model.Pattern
	garment  condition.Assignment
	parts    []*model.Instance // the cut cloth of this garment
	held     map[*model.Instance]*model.Instance
	worked   map[*model.Instance]bool // something has been sewn on it
	fused    map[*model.Instance]bool
	gaps     map[*model.Gap]bool
	pressed  map[*model.Join]bool
	finished map[*model.Join]bool
	lines    map[model.EdgeUse]*line
	order    []model.EdgeUse
	sewn     map[*model.Join]map[*stretch]bool
	points   []int // which points are one, by number
	corners  map[corner]int
	meets    map[[2]model.EdgeUse]bool
	several  map[*line]int // how many seams and steps take an edge or a stretch of it
}

func newWorktable(p *model.Pattern, a condition.Assignment) *worktable {
	t := &worktable{Pattern: p, garment: a, held: map[*model.Instance]*model.Instance{}, worked: map[*model.Instance]bool{},
		fused: map[*model.Instance]bool{}, gaps: map[*model.Gap]bool{}, pressed: map[*model.Join]bool{}, finished: map[*model.Join]bool{},
		lines: map[model.EdgeUse]*line{}, sewn: map[*model.Join]map[*stretch]bool{}, corners: map[corner]int{}, meets: map[[2]model.EdgeUse]bool{}}
	for _, x := range p.Pieces {
		for _, i := range x.Cloths() {
			if t.holds(i.Cond) && !x.Template {
				t.parts = append(t.parts, i)
			}
		}
	}
	t.layOut()
	return t
}

// holds reports whether a condition holds in this garment.
func (t *worktable) holds(c condition.Cond) bool { return t.Space.Eval(c, t.garment) }

// each calls f for every target that is there in this garment.
func (t *worktable) each(list []*model.Target, f func(*model.Target)) {
	for _, x := range list {
		x.Each(func(x *model.Target) {
			if x.Kind == model.ToSide || t.holds(x.Cond) {
				f(x)
			}
		})
	}
}

// root finds the part that stands for all that a part hangs together with.
func (t *worktable) root(i *model.Instance) *model.Instance {
	for t.held[i] != nil {
		i = t.held[i]
	}
	return i
}

// hold notes that parts hang together from now on.
func (t *worktable) hold(list []*model.Instance) {
	for n, i := range list {
		t.worked[i] = true
		if a, b := t.root(list[0]), t.root(i); n > 0 && a != b {
			t.held[b] = a
		}
	}
}

// do plays one operation.
func (t *worktable) do(op *model.Op) {
	t.each(op.Objects, func(o *model.Target) {
		switch {
		case op.Verb == "fuse", op.Verb == "baste":
			t.fuse(op, o)
		case o.Gap != nil:
			t.gaps[o.Gap] = t.gaps[o.Gap] && !op.Row.Shuts && !op.Row.Sews
		case o.Seam != nil:
			t.onSeam(op, o)
		}
		t.rims(op, o.Uses, rimOf[op.Verb])
	})
	t.through(op)
	if op.Row.Joins {
		t.fasten(op)
	}
	if g := op.Phrase("leaving"); g != nil && g.Gap != "" {
		for _, x := range t.Gaps {
			if x.ID == g.Gap {
				t.gaps[x] = true
			}
		}
	}
}

// fuse puts in interfacing: what is named, or all that is cut for what is named.
func (t *worktable) fuse(op *model.Op, o *model.Target) {
	named := false
	for _, i := range o.Instances {
		if !i.Cloth() {
			named, t.fused[i] = true, true
		}
	}
	if named || op.Verb != "fuse" {
		return
	}
	for _, i := range o.Instances {
		for _, x := range i.Piece.Interfacings() {
			if x.Side == i.Side || x.Side == model.Neither || i.Side == model.Neither {
				t.fused[x] = true
			}
		}
	}
}

// onSeam plays an operation on the copies of a seam that it means.
func (t *worktable) onSeam(op *model.Op, o *model.Target) {
	for _, j := range o.Seam.Copies {
		if !SewnBy(op, o, j) || !t.holds(j.Cond) {
			continue
		}
		switch {
		case op.Row.Sews:
			t.sew(j, o)
		case op.Verb == "press" || op.Verb == "steam":
			t.pressed[j] = true
		case finishes[op.Verb]:
			t.finished[j] = true
		}
	}
}

// sew sews a seam line, or a stretch of it, and what is caught in it.
func (t *worktable) sew(j *model.Join, o *model.Target) {
	var in []*model.Instance
	for _, u := range j.Uses() {
		if t.holds(u.Cond) {
			in = append(in, u.Instance)
		}
	}
	t.joinLines(j, o)
	for _, k := range j.Seam.Catching {
		t.each([]*model.Target{k.Target}, func(x *model.Target) {
			for _, i := range x.Instances {
				if t.holds(i.Cond) && beSide(i.Side, j.Side) {
					in = append(in, i)
				}
			}
			for _, u := range x.Uses {
				if t.holds(u.Cond) && beSide(u.Side, j.Side) {
					t.shutLine(keyOf(u))
				}
			}
		})
	}
	t.hold(in)
}

// beSide reports whether two things can be on the same side of the body.
func beSide(a, b model.Side) bool { return a == b || a == model.Neither || b == model.Neither }

// fasten holds together what an operation lays, tacks or sets on something else;
// if it names nothing else, what it names itself.
func (t *worktable) fasten(op *model.Op) {
	var own, base []*model.Instance
	t.each(op.Objects, func(o *model.Target) {
		if o.Seam == nil {
			own = append(own, t.here(o.Instances)...)
		}
	})
	for _, p := range op.Phrases {
		t.each(p.Targets, func(o *model.Target) {
			base = append(base, t.here(o.Parts())...)
			if o.Seam != nil {
				for _, u := range o.Seam.Uses() {
					base = append(base, t.here([]*model.Instance{u.Instance})...)
				}
			}
		})
	}
	for _, a := range own {
		t.worked[a] = true
		for _, b := range base {
			if a != b && beSide(a.Side, b.Side) {
				t.hold([]*model.Instance{a, b})
			}
		}
	}
	if len(base) == 0 && len(own) > 1 {
		t.hold(own)
	}
}

// here keeps the cut cloth that is there in this garment.
func (t *worktable) here(list []*model.Instance) (all []*model.Instance) {
	for _, i := range list {
		if i.Cloth() && t.holds(i.Cond) {
			all = append(all, i)
		}
	}
	return
}

// assemblies divides the cut parts into those that hang together and those that
// lie loose.
func (t *worktable) assemblies() (all []Assembly, loose []*model.Instance) {
	at := map[*model.Instance]int{}
	for _, i := range t.parts {
		root := t.root(i)
		n, known := at[root]
		switch {
		case !known && root == i && !t.worked[i]:
			loose = append(loose, i)
			continue
		case !known:
			n, at[root] = len(all), len(all)
			all = append(all, Assembly{Separate: true})
		}
		all[n].Parts = append(all[n].Parts, i)
		all[n].Separate = all[n].Separate && i.Piece.Separate
	}
	rounds := t.rounds()
	for n := range all {
		all[n].Rounds = rounds[t.root(all[n].Parts[0])]
	}
	return
}
