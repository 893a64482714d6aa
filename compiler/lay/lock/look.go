package lock

import (
	"cmp"
	"fmt"
	"slices"

	"seamwarden/compiler/lay"
	"seamwarden/dsl/finding"
)

// Look gives for each job the lay that is remembered and holds, nil if there is none,
// and says which are missing, stale, edited or not needed: all of a kind at once, but
// of each edited one by itself.
//
// A lay is stale if it is of the same label with another key: what it depends on was
// changed since. cannot says why a job that has no lay cannot have one, nil if it can:
// then it is not missing.
func (f *File) Look(jobs []Named, cannot func(int) error) ([]*lay.Lay, []finding.Finding) {
	k := &looker{file: f, byKey: map[string]*Entry{}, byLabel: map[string]*Entry{}, used: map[*Entry]bool{}, stale: map[*Entry][]string{}, spoiled: map[*Entry]bool{}}
	for _, e := range f.Entries {
		if k.byKey[e.Key] == nil {
			k.byKey[e.Key] = e
		}
		for _, label := range e.For {
			if k.byLabel[label] == nil {
				k.byLabel[label] = e
			}
		}
	}
	lays := make([]*lay.Lay, len(jobs))
	for i, j := range jobs {
		lays[i] = k.one(i, j, cannot)
	}
	k.rest()
	slices.SortStableFunc(k.found, func(a, b finding.Finding) int {
		return cmp.Or(a.Place.Start.Offset-b.Place.Start.Offset, cmp.Compare(a.Rule, b.Rule))
	})
	return lays, k.found
}

type looker struct {
	file           *File
	byKey, byLabel map[string]*Entry
	used           map[*Entry]bool
	missing        []string
	stale          map[*Entry][]string // the labels of which it is out of date
	spoiled        map[*Entry]bool     // it was said that it does not hold
	found          []finding.Finding
}

// one finds the lay of a job. A lay that does not hold is spoken of once.
func (k *looker) one(i int, j Named, cannot func(int) error) *lay.Lay {
	e := k.byKey[j.Key()]
	if e == nil {
		old := k.byLabel[j.Label]
		switch {
		case old != nil:
			k.used[old] = true
			k.stale[old] = append(k.stale[old], j.Label)
		case cannot(i) == nil:
			k.missing = append(k.missing, j.Label)
		}
		return nil
	}
	k.used[e] = true
	l, why := e.holds(j.Job)
	if why == nil {
		return &l
	}
	if !k.spoiled[e] {
		k.spoiled[e] = true
		k.found = append(k.found, edited(e, j.Label, why))
	}
	return nil
}

// holds checks an entry against the job that it is of.
func (e *Entry) holds(j lay.Job) (lay.Lay, error) {
	l, err := e.Lay.Renumbered(j.Order())
	if err != nil {
		return l, err
	}
	length, err := j.Check(l)
	if err == nil && length != l.Length {
		err = fmt.Errorf("it says that it is %s mm long, and is %s mm", millimetres(l.Length), millimetres(length))
	}
	return l, err
}

// Start gives the remembered lay of a label to begin a search with, whether it still
// holds or not; nil if there is none.
func (f *File) Start(j Named) *lay.Lay {
	key := j.Key()
	for _, same := range []func(*Entry) bool{
		func(e *Entry) bool { return e.Key == key },
		func(e *Entry) bool { return slices.Contains(e.For, j.Label) },
	} {
		for _, e := range f.Entries {
			if same(e) {
				if l, err := e.Lay.Renumbered(j.Order()); err == nil {
					return &l
				}
			}
		}
	}
	return nil
}

// rest speaks of what is missing, of what is out of date, and of what nothing needs.
func (k *looker) rest() {
	var stale, unused []*Entry
	var labels []string
	for _, e := range k.file.Entries {
		if of := k.stale[e]; of != nil {
			stale, labels = append(stale, e), append(labels, of...)
		}
		if !k.used[e] {
			unused = append(unused, e)
		}
	}
	if len(k.missing) > 0 {
		k.found = append(k.found, Missing(finding.Span{File: k.file.Name}, k.missing))
	}
	if len(stale) > 0 {
		k.found = append(k.found, outOfDate(stale, labels))
	}
	if len(unused) > 0 {
		k.found = append(k.found, notNeeded(unused))
	}
}
