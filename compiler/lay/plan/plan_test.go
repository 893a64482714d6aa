package plan

import (
	"reflect"
	"strings"
	"testing"

	"seamwarden/compiler/lay"
)

const cm = 1000

// grades are invented tops in some sizes and two widths; each size comes after the one
// below it.
func grades(sizes int) []Task {
	var all []Task
	for _, width := range []int64{115, 140} {
		for s := range int64(sizes) {
			w, h := (24+s)*cm, (60+s)*cm
			body := []lay.Point{{}, {X: w}, {X: w, Y: h - 20*cm}, {X: w - 6*cm, Y: h - 16*cm}, {X: w - 8*cm, Y: h - 4*cm}, {X: 8 * cm, Y: h}, {Y: h - 8*cm}}
			sleeve := []lay.Point{{}, {X: 36 * cm}, {X: 40 * cm, Y: 40 * cm}, {X: 20 * cm, Y: (54 + s) * cm}, {X: -4 * cm, Y: 40 * cm}}
			t := Task{Label: "size " + string(rune('a'+s)), After: -1, Job: lay.Job{Cloth: lay.Cloth{Width: width * cm}, Pieces: []lay.Piece{
				{Name: "body", Outline: body, Grain: lay.Point{Y: 1}, Either: 2, Fold: &[2]lay.Point{{}, {Y: h - 8*cm}}},
				{Name: "sleeve", Outline: sleeve, Grain: lay.Point{Y: 1}, Drawn: 1, Mirrored: 1},
			}}}
			if s > 0 {
				t.After = len(all) - 1
			}
			all = append(all, t)
		}
	}
	return all
}

func run(t *testing.T, tasks []Task, o Options) []Result {
	t.Helper()
	o.Work = 20_000
	r, err := Run(tasks, o)
	if err != nil {
		t.Fatal(err)
	}
	for i := range r {
		if r[i].Err != nil {
			t.Fatal(r[i].Err)
		}
		if _, err := tasks[i].Check(r[i].Lay); err != nil {
			t.Fatalf("%s: %v", tasks[i].Label, err)
		}
	}
	return r
}

func TestCoresAndMachinesDoNotChangeTheLays(t *testing.T) {
	tasks := grades(4)
	told := 0
	one := run(t, tasks, Options{Workers: 1, Progress: func(d Done) {
		if told++; d.Finished != told || d.Of != len(tasks) || d.Lay.Length == 0 {
			t.Errorf("told %+v", d)
		}
	}})
	if told != len(tasks) {
		t.Errorf("told of %d", told)
	}
	if many := run(t, tasks, Options{Workers: 5}); !reflect.DeepEqual(one, many) {
		t.Error("five workers give other lays than one")
	}
	parts := make([]Result, len(tasks))
	for i := range 3 {
		part, index, err := Shard(tasks, i+1, 3)
		if err != nil {
			t.Fatal(err)
		}
		for k, r := range run(t, part, Options{}) {
			parts[index[k]] = r
		}
	}
	if !reflect.DeepEqual(one, parts) {
		t.Error("three machines give other lays than one")
	}
}

func TestTheSameJobIsLaidOnce(t *testing.T) {
	tasks := grades(2)
	again := tasks[1]
	again.Label, again.After = "view B", -1
	again.Pieces = []lay.Piece{again.Pieces[1], again.Pieces[0]}
	tasks = append(tasks, again)
	r := run(t, tasks, Options{})
	if r[1].Lay.Length != r[4].Lay.Length || r[1].Lay.Places[0].Piece == r[4].Lay.Places[0].Piece && len(r[1].Lay.Places) == 2 {
		t.Errorf("%v\n%v", r[1], r[4])
	}
}

func TestALayIsNotLongerThanTheOneThatIsRemembered(t *testing.T) {
	tasks := grades(2)
	good, err := Run(tasks, Options{Work: 200_000})
	if err != nil {
		t.Fatal(err)
	}
	for i := range tasks {
		tasks[i].Remembered = &good[i].Lay
	}
	r, err := Run(tasks, Options{Work: 500, Seed: 9, Workers: 1})
	if err != nil {
		t.Fatal(err)
	}
	for i := range r {
		if r[i].Lay.Cloth() > good[i].Lay.Cloth() {
			t.Errorf("%s: %d, and %d was remembered", tasks[i].Label, r[i].Lay.Cloth(), good[i].Lay.Cloth())
		}
	}
}

func TestWhatCannotBePlannedIsSaid(t *testing.T) {
	tasks := grades(2)
	tasks[0].After = 1
	if _, err := Run(tasks, Options{}); err == nil || !strings.Contains(err.Error(), "does not come before it") {
		t.Error(err)
	}
	if _, _, err := Shard(grades(1), 3, 2); err == nil || !strings.Contains(err.Error(), "no part 3 of 2") {
		t.Error(err)
	}
	tasks = grades(1)
	tasks[0].Cloth.Width = 9 * cm
	r, err := Run(tasks, Options{Work: 1000})
	if err != nil || r[0].Err == nil || r[1].Err != nil {
		t.Error(err, r)
	}
}
