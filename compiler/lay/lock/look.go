package lock

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"seamwarden/compiler/lay"
	"seamwarden/dsl/finding"
)

// Look gives for each job the lay that is remembered and holds, nil if there is none,
// and says which are missing, stale, edited or not needed.
//
// A lay is stale if it is of the same label with another key: what it depends on was
// changed since.
func (f *File) Look(jobs []Named) ([]*lay.Lay, []Trouble) {
	k := &looker{file: f, byKey: map[string]*Entry{}, byLabel: map[string]*Entry{}, used: map[*Entry]bool{}, stale: map[*Entry][]string{}}
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
	checked := map[*Entry]bool{}
	for i, j := range jobs {
		lays[i] = k.one(j, checked)
	}
	k.rest()
	slices.SortStableFunc(k.found, func(a, b Trouble) int {
		return cmp.Or(a.Span.Start.Offset-b.Span.Start.Offset, cmp.Compare(a.Kind, b.Kind))
	})
	return lays, k.found
}

type looker struct {
	file           *File
	byKey, byLabel map[string]*Entry
	used           map[*Entry]bool
	missing        []string
	stale          map[*Entry][]string // the labels of which it is out of date
	found          []Trouble
}

// one finds the lay of a job. A lay that does not hold is spoken of once.
func (k *looker) one(j Named, spoiled map[*Entry]bool) *lay.Lay {
	e := k.byKey[j.Key()]
	if e == nil {
		old := k.byLabel[j.Label]
		if old == nil {
			k.missing = append(k.missing, j.Label)
		} else {
			k.used[old] = true
			k.stale[old] = append(k.stale[old], j.Label)
		}
		return nil
	}
	k.used[e] = true
	l, why := e.holds(j.Job)
	if why == nil {
		return &l
	}
	if !spoiled[e] {
		spoiled[e] = true
		k.add(troubleOf("lay-edited", finding.Warning, e.Span, fmt.Sprintf("The remembered lay of %s does not hold: %v.", finding.OneLine(j.Label), why),
			"The file was changed by hand or damaged. The lay is not used."))
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

const renew = "Have the lays found anew, and keep the file with the pattern."

// rest speaks of what is missing, all at once, of what is out of date, and of what
// nothing needs.
func (k *looker) rest() {
	if n := len(k.missing); n > 0 {
		names := strings.Join(k.missing[:min(n, 3)], "; ")
		if n > 3 {
			names += fmt.Sprintf("; and %d more", n-3)
		}
		lays := "lay is"
		if n > 1 {
			lays = "lays are"
		}
		k.add(troubleOf("lay-missing", finding.Warning, finding.Span{File: k.file.Name}, fmt.Sprintf("%d %s not yet found: %s.", n, lays, finding.OneLine(names)),
			"How much cloth a garment needs is known only once its pieces have been laid."))
	}
	for _, e := range k.file.Entries {
		if of := k.stale[e]; of != nil {
			k.add(troubleOf("lay-stale", finding.Warning, e.Span, fmt.Sprintf("The remembered lay of %s is out of date.", finding.OneLine(strings.Join(of, "; "))),
				"Its pieces, its cloth or the way of laying were changed after it was found, so it may need more cloth or less."))
		}
		if !k.used[e] {
			k.add(troubleOf("lay-unused", finding.Advice, e.Span, fmt.Sprintf("Nothing needs the remembered lay of %s.", finding.OneLine(strings.Join(e.For, "; "))),
				"The view, size or width that it belongs to is gone, or the lay is there twice."))
		}
	}
}

// Trouble is something wrong with remembered lays. Kind is not the name of a rule:
// nothing that is compiled asks for lays yet, so no finding is made of it here.
type Trouble struct {
	Kind                string // lay-missing, lay-stale, lay-edited, lay-unused, lays-unreadable
	Severity            finding.Severity
	Span                finding.Span
	Headline, Why, Help string
}

func troubleOf(kind string, s finding.Severity, at finding.Span, headline, why string) Trouble {
	return Trouble{kind, s, at, headline, why, renew}
}

func (k *looker) add(f Trouble) { k.found = append(k.found, f) }
