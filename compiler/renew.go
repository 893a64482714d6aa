package compiler

import (
	"errors"
	"fmt"

	"seamwarden/compiler/lay"
	"seamwarden/compiler/lay/lock"
	"seamwarden/compiler/lay/plan"
)

// Renewal says how lays are to be found anew.
type Renewal struct {
	Seconds       float64 // of work for each lay, about; 0 finds nothing new
	Shard, Shards int     // the part of all lays that is looked for, from 1; 0 is all
	Stop          func() bool
	Progress      func(done, of int)
}

// Laid is how one lay came out. Lay is nil if none is known, and Err says why.
type Laid struct {
	Lay *lay.Lay
	Err error
}

// Renew finds the lays of several patterns on all cores, each beginning with what is
// remembered of it, so that none becomes longer. For each pattern it gives how its lays
// came out, in the order of Wanted, and the file to be remembered from now on. Lays that
// were not looked for keep what is remembered of them, if it holds.
func Renew(patterns []*Lays, r Renewal) ([][]Laid, []*lock.File, error) {
	var tasks []plan.Task
	first := make([]int, len(patterns)) // the first task of each
	for i, l := range patterns {
		first[i] = len(tasks)
		tasks = append(tasks, l.tasks(len(tasks))...)
	}
	found, err := r.run(tasks)
	if err != nil {
		return nil, nil, err
	}
	outcomes := make([][]Laid, len(patterns))
	files := make([]*lock.File, len(patterns))
	for i, l := range patterns {
		outcomes[i] = l.take(found[first[i]:])
		if files[i], err = l.remember(outcomes[i]); err != nil {
			return nil, nil, err
		}
	}
	return outcomes, files, nil
}

// tasks are the lays of a pattern, of which from stand before them. A size begins with
// the lay of the one before it.
func (l *Lays) tasks(from int) (all []plan.Task) {
	for i, w := range l.Wanted {
		t := plan.Task{Label: w.Label, Job: w.Job, After: -1, Remembered: w.Found}
		if t.Remembered == nil {
			t.Remembered = l.File.Start(lock.Named{Label: w.Label, Job: w.Job})
		}
		if i > 0 {
			if b := l.Wanted[i-1]; b.Material == w.Material && b.Width == w.Width && b.Nap == w.Nap && b.Cond == w.Cond {
				t.After = from + i - 1
			}
		}
		all = append(all, t)
	}
	return
}

// run looks for the lays of this part. Those of others have no lay, and no error.
func (r Renewal) run(tasks []plan.Task) ([]plan.Result, error) {
	all := make([]plan.Result, len(tasks))
	if r.Seconds <= 0 {
		return all, nil
	}
	part, index, err := plan.Shard(tasks, max(r.Shard, 1), max(r.Shards, 1))
	if err != nil {
		return nil, err
	}
	o := plan.Options{Work: int64(r.Seconds * lay.DefaultWork), Stop: r.Stop}
	if r.Progress != nil {
		o.Progress = func(d plan.Done) { r.Progress(d.Finished, d.Of) }
	}
	found, err := plan.Run(part, o)
	for i, f := range found {
		all[index[i]] = f
	}
	return all, err
}

// take gives of each lay the shorter of what was found and what is remembered.
func (l *Lays) take(found []plan.Result) (all []Laid) {
	for i, w := range l.Wanted {
		one := Laid{Lay: w.Found, Err: found[i].Err}
		if f := found[i].Lay; found[i].Err == nil && len(f.Places) > 0 {
			if n, err := w.Job.Check(f); err == nil {
				f.Length = n
			}
			if w.Found == nil || f.Cloth() < w.Found.Cloth() {
				one.Lay = &f
			}
		}
		if one.Lay != nil || errors.Is(one.Err, plan.ErrStopped) {
			one.Err = nil
		}
		all = append(all, one)
	}
	return
}

// remember makes the file. What is written has passed the check.
func (l *Lays) remember(outcome []Laid) (*lock.File, error) {
	lays := make([]lay.Lay, len(outcome))
	for i, o := range outcome {
		if o.Lay != nil {
			lays[i] = *o.Lay
		}
	}
	f, err := lock.Remember(LaysFile, l.Named(), lays)
	if err != nil {
		return nil, fmt.Errorf("a lay that was found does not hold, which is a fault of the search: %w", err)
	}
	return f, nil
}

// Merge takes over the lays of another file: what another machine found.
func (l *Lays) Merge(name string, src []byte) (problems []string) {
	other, found := lock.Decode(name, src)
	for _, f := range found {
		problems = append(problems, f.Headline)
	}
	l.File.Merge(other)
	lays, _ := l.File.Look(l.Named(), func(int) error { return nil })
	for i, w := range l.Wanted {
		if w.Found == nil || lays[i] != nil && lays[i].Cloth() < w.Found.Cloth() {
			w.Found = lays[i]
		}
	}
	return problems
}
