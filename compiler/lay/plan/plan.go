// Package plan finds many lays: those of a pattern's views, options, sizes and widths.
//
// In: the jobs, which of them are neighbours, and how much work each may take. Out: a
// lay for each. It knows no files and no terminal; it tells of each lay that is done.
//
// A size begins with the lay of its neighbour, which is done before it. What a job
// gives depends on its neighbour, the work and the seed only, not on how many cores
// there are or how the jobs were shared out among machines.
package plan

import (
	"errors"
	"fmt"
	"runtime"
	"sync"

	"seamwarden/compiler/lay"
)

// Task is a job with a name. After is the index of the neighbour whose lay it begins
// with, an earlier one, or -1. Remembered is a lay to begin with that comes before the
// neighbour's, nil for none: if it holds, the new lay is not longer.
type Task struct {
	Label string
	lay.Job
	After      int
	Remembered *lay.Lay
}

// ErrStopped says that a task was not begun since the run was to end.
var ErrStopped = errors.New("it was stopped before this lay was begun")

// Options say how long to look, and whom to tell. The zero value is a second's work for
// each lay, and all cores.
type Options struct {
	Work    int64
	Seeds   int
	Seed    uint64
	Workers int
	// Stop is asked now and then whether to end early, by one worker at a time; then a
	// run need not be repeatable.
	Stop func() bool
	// Progress is told of each task that is done, of one at a time.
	Progress func(Done)
}

// Done is how far the run is.
type Done struct {
	Task     int
	Finished int
	Of       int
	Result
}

// Result is a lay, or why there is none.
type Result struct {
	Lay lay.Lay
	Err error
}

// Run finds the lays of all tasks, in their order. Jobs with the same key are laid
// once. It fails if a neighbour does not come first.
func Run(tasks []Task, o Options) ([]Result, error) {
	same, err := leaders(tasks)
	if err != nil {
		return nil, err
	}
	if o.Work <= 0 {
		o.Work = lay.DefaultWork
	}
	if o.Workers <= 0 {
		o.Workers = runtime.GOMAXPROCS(0)
	}
	if stop := o.Stop; stop != nil {
		var one sync.Mutex
		o.Stop = func() bool {
			one.Lock()
			defer one.Unlock()
			return stop()
		}
	}
	r := &runner{tasks: tasks, options: o, same: same, results: make([]Result, len(tasks)), done: make([]chan struct{}, len(tasks))}
	for i := range r.done {
		r.done[i] = make(chan struct{})
	}
	r.run()
	return r.results, nil
}

// leaders gives for each task the first with the same key.
func leaders(tasks []Task) ([]int, error) {
	first := map[string]int{}
	same := make([]int, len(tasks))
	for i, t := range tasks {
		if t.After < -1 || t.After >= i {
			return nil, fmt.Errorf("%s is to begin with a lay that does not come before it", t.Label)
		}
		key := t.Key()
		if _, ok := first[key]; !ok {
			first[key] = i
		}
		same[i] = first[key]
	}
	return same, nil
}

type runner struct {
	tasks    []Task
	options  Options
	same     []int
	results  []Result
	done     []chan struct{}
	telling  sync.Mutex
	finished int
}

// run starts a goroutine for each task, which waits for those it needs and then for one
// of the workers' turns. Whatever is waited for comes earlier, so all come to an end.
func (r *runner) run() {
	turns := make(chan struct{}, r.options.Workers)
	var all sync.WaitGroup
	for i := range r.tasks {
		all.Go(func() {
			defer close(r.done[i])
			if lead := r.same[i]; lead != i {
				<-r.done[lead]
				r.results[i] = copied(r.tasks[lead].Job, r.tasks[i].Job, r.results[lead])
			} else {
				if after := r.tasks[i].After; after >= 0 {
					<-r.done[after]
				}
				turns <- struct{}{}
				r.results[i] = r.find(i)
				<-turns
			}
			r.tell(i)
		})
	}
	all.Wait()
}

// find looks for the lay of one task.
func (r *runner) find(i int) Result {
	t, o := r.tasks[i], r.options
	if o.Stop != nil && o.Stop() {
		return Result{Err: ErrStopped}
	}
	e := lay.Effort{Work: o.Work, Seeds: o.Seeds, Seed: o.Seed, Stop: o.Stop}
	if t.After >= 0 && r.results[t.After].Err == nil {
		e.Start = &r.results[t.After].Lay
	}
	if t.Remembered != nil {
		e.Start = t.Remembered
	}
	l, err := t.Find(e)
	return Result{l, err}
}

// copied gives the lay of a job to another with the same key, whose pieces may stand in
// another order.
func copied(from, to lay.Job, r Result) Result {
	if r.Err != nil {
		return r
	}
	number := make([]int, len(from.Pieces))
	order := to.Order()
	for n, piece := range from.Order() {
		number[piece] = order[n]
	}
	l, err := r.Lay.Renumbered(number)
	return Result{l, err}
}

func (r *runner) tell(i int) {
	r.telling.Lock()
	defer r.telling.Unlock()
	r.finished++
	if r.options.Progress != nil {
		r.options.Progress(Done{i, r.finished, len(r.tasks), r.results[i]})
	}
}

// Shard is the part i of n of the tasks, i from 1, and the index that each had. Tasks
// that begin with each other's lay, or have the same, stay together, so the parts give
// the lays that the whole would.
func Shard(tasks []Task, i, n int) ([]Task, []int, error) {
	if i < 1 || i > n {
		return nil, nil, fmt.Errorf("there is no part %d of %d", i, n)
	}
	same, err := leaders(tasks)
	if err != nil {
		return nil, nil, err
	}
	family := families(tasks, same)
	number := map[int]int{} // of a family, in the order in which they begin
	var part []Task
	var index []int
	moved := map[int]int{-1: -1}
	for k, t := range tasks {
		f := family[k]
		if _, ok := number[f]; !ok {
			number[f] = len(number)
		}
		if number[f]%n != i-1 {
			continue
		}
		moved[k] = len(part)
		t.After = moved[t.After]
		part, index = append(part, t), append(index, k)
	}
	return part, index, nil
}

// families gives for each task the first of those that hang together with it.
func families(tasks []Task, same []int) []int {
	of := make([]int, len(tasks))
	var root func(int) int
	root = func(i int) int {
		if of[i] != i {
			of[i] = root(of[i])
		}
		return of[i]
	}
	join := func(a, b int) {
		a, b = root(a), root(b)
		of[max(a, b)] = min(a, b)
	}
	for i, t := range tasks {
		of[i] = i
		join(i, same[i])
		if t.After >= 0 {
			join(i, t.After)
		}
	}
	for i := range of {
		of[i] = root(i)
	}
	return of
}
