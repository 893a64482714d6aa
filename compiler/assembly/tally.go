package assembly

import (
	"seamwarden/compiler/condition"
	"seamwarden/compiler/model"
)

// deed is something that was done, by which operation and in which garments.
type deed struct {
	op   *model.Op
	cond condition.Cond
}

// tally remembers what was done to things of one kind: where, and by what.
type tally[K comparable] struct {
	space *condition.Space
	of    map[K]*done
}

type done struct {
	where condition.Cond
	deeds []deed
}

func newTally[K comparable](s *condition.Space) tally[K] {
	return tally[K]{s, map[K]*done{}}
}

func (t tally[K]) add(k K, op *model.Op, c condition.Cond) {
	if c == condition.False {
		return
	}
	d := t.of[k]
	if d == nil {
		d = &done{}
		t.of[k] = d
	}
	d.where = t.space.Or(d.where, c)
	d.deeds = append(d.deeds, deed{op, c})
}

// where gives the garments in which something was done to a thing.
func (t tally[K]) where(k K) condition.Cond {
	if d := t.of[k]; d != nil {
		return d.where
	}
	return condition.False
}

func (t tally[K]) deeds(k K) []deed {
	if d := t.of[k]; d != nil {
		return d.deeds
	}
	return nil
}

// only gives the deeds of some operations, and where they were done.
func (t tally[K]) only(k K, keep func(*model.Op) bool) (c condition.Cond, list []deed) {
	for _, d := range t.deeds(k) {
		if keep(d.op) {
			c, list = t.space.Or(c, d.cond), append(list, d)
		}
	}
	return
}
