package assembly

import (
	"seamwarden/compiler/condition"
	"seamwarden/compiler/model"
)

// row is one of the two rows of a seam line. Alternatives stand in it one after
// the other, so what follows what depends on the garment.
type row struct {
	first, last []member // the members that begin and end it
	single      []member // those that are all of it
	pairs       []pair   // members that follow each other
}

// member is an edge of a row, with where it has its place there.
type member struct {
	use  model.EdgeUse
	cond condition.Cond
}

// pair is two edges that lie beside each other in a row, wherever cond holds.
type pair struct {
	a, b model.EdgeUse
	cond condition.Cond
}

func rowOf(space *condition.Space, j *model.Join, list []*model.EdgeUse) (r row) {
	there := make([]condition.Cond, len(list))
	for i, u := range list {
		there[i] = space.And(u.Cond, j.Cond)
	}
	before := condition.False
	for i, u := range list {
		left := there[i] // where nothing that follows it has been met yet
		for k := i + 1; k < len(list) && left != condition.False; k++ {
			if c := space.And(left, there[k]); c != condition.False {
				r.pairs = append(r.pairs, pair{keyOf(u), keyOf(list[k]), c})
			}
			left = space.Diff(left, there[k])
		}
		begins := space.Diff(there[i], before)
		r.first = with(r.first, keyOf(u), begins)
		r.last = with(r.last, keyOf(u), left)
		r.single = with(r.single, keyOf(u), space.And(begins, left))
		before = space.Or(before, there[i])
	}
	return
}

func with(list []member, u model.EdgeUse, c condition.Cond) []member {
	if c == condition.False {
		return list
	}
	return append(list, member{u, c})
}

// wraps gives the pairs that close a row to a ring: its last member and its first.
func (r row) wraps(space *condition.Space) (all []pair) {
	for _, l := range r.last {
		for _, f := range r.first {
			if c := space.And(l.cond, f.cond); c != condition.False {
				all = append(all, pair{l.use, f.use, c})
			}
		}
	}
	return
}

// caught lists the edges that are caught in a seam line: those on its side.
func caught(j *model.Join) (all []model.EdgeUse) {
	for _, k := range j.Seam.Catching {
		k.Target.Each(func(t *model.Target) {
			for _, u := range t.Uses {
				if beSide(u.Side, j.Side) {
					all = append(all, keyOf(u))
				}
			}
		})
	}
	return
}

// itself reports whether a seam line joins an edge to itself.
func itself(j *model.Join) bool { return len(j.A) == 1 && len(j.B) == 1 && *j.A[0] == *j.B[0] }
