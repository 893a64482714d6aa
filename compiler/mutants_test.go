package compiler_test

import (
	"flag"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"regexp"
	"runtime"
	"slices"
	"sort"
	"strings"
	"sync"
	"testing"
	"testing/fstest"

	"seamwarden/compiler"
	"seamwarden/dsl"
	"seamwarden/dsl/finding"
)

var (
	full = flag.Bool("full", false, "break the samples in every place, not in one of eight")
	only = flag.String("only", "", "with -full: break the samples only in the slips whose name this expression meets")
)

// A mutant is a sample with one slip that a tired person makes. Every operator is
// applied at every place; the compiler must find each mutant that changes what is
// printed for some garment. Those that it does not find are listed in testdata/survivors.txt, each
// with the reason why nothing in the pattern contradicts it, and the test fails
// if one more survives.
type mutant struct {
	sample, operator, file string
	line                   int
	was, is                string
	text                   string // of the whole file
}

func (m mutant) name() string {
	return fmt.Sprintf("%s | %s | %s | %s", m.sample, m.operator, clip(m.was), clip(m.is))
}

func clip(s string) string {
	s = strings.Join(strings.Fields(s), " ")
	if r := []rune(s); len(r) > 70 {
		return string(r[:70]) + "…"
	}
	return s
}

// reached is the score that is wanted and must not be lost, in per cent.
const reached = 98.0

func TestMutantsAreFound(t *testing.T) {
	known := survivors(t)
	met := map[string]bool{}
	var lines []string
	allFound, allMeant := 0, 0
	for _, sample := range sampleNames(t) {
		folder := readSample(t, sample)
		found, meant, alive := hunt(t, sample, folder)
		allFound, allMeant = allFound+found, allMeant+meant
		for _, name := range alive {
			met[name] = true
			if *only != "" {
				t.Logf("alive: %s", name)
			}
			if strings.HasPrefix(known[name], "equivalent") {
				allMeant, meant = allMeant-1, meant-1
			}
			switch {
			case known[name] == "":
				t.Errorf("a new survivor: %s", name)
			case *only != "":
				t.Logf("survives: %s", name)
			}
		}
		lines = append(lines, fmt.Sprintf("%-14s %5d mutants change what is made, %5d are found (%.1f %%)", sample, meant, found, 100*float64(found)/float64(meant)))
	}
	for name := range known {
		if *full && *only == "" && !met[name] {
			t.Errorf("listed as a survivor, and found now (take it off the list): %s", name)
		}
	}
	for _, l := range lines {
		t.Log(l)
	}
	score := 100 * float64(allFound) / float64(allMeant)
	told := fmt.Sprintf("%.1f %% of %d", score, allMeant)
	t.Log("in all " + told)
	if page, err := os.ReadFile("../DEVELOPERS.md"); *full && *only == "" && (err != nil || !strings.Contains(string(page), told)) {
		t.Errorf("DEVELOPERS.md does not tell the score, which is %s", told)
	}
	if *full && *only == "" && score < reached {
		t.Errorf("only %.1f %% of the mutants are found; %.1f %% are wanted", score, reached)
	}
}

func sampleNames(t *testing.T) (all []string) {
	entries, err := os.ReadDir("../samples")
	if err != nil {
		t.Fatal(err)
	}
	for _, e := range entries {
		if _, err := os.Stat(filepath.Join("../samples", e.Name(), compiler.Root)); err == nil {
			all = append(all, e.Name())
		}
	}
	return
}

func readSample(t *testing.T, sample string) fstest.MapFS {
	m := fstest.MapFS{}
	root := filepath.Join("../samples", sample)
	err := filepath.WalkDir(root, func(path string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() {
			return err
		}
		name, _ := filepath.Rel(root, path)
		if strings.HasPrefix(filepath.ToSlash(name), "out/") || name == compiler.LaysFile {
			return nil // of lays only their absence would be told, and it does not count
		}
		src, err := os.ReadFile(path)
		m[filepath.ToSlash(name)] = &fstest.MapFile{Data: src}
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
	return m
}

// hunt compiles every mutant of a sample.
func hunt(t *testing.T, sample string, folder fstest.MapFS) (found, meant int, alive []string) {
	r, err := compiler.Compile(folder)
	if err != nil {
		t.Fatal(err)
	}
	if slices.ContainsFunc(r.Findings, counts) {
		t.Fatalf("%s is not clean as it stands, so nothing can be said of its mutants", sample)
	}
	touched := touchedBySteps(r.Pattern)
	var all []mutant
	for name, f := range folder {
		if strings.HasSuffix(name, ".seam") {
			all = append(all, mutantsOf(sample, name, string(f.Data), touched)...)
		}
	}
	sort.Slice(all, func(i, j int) bool { return all[i].name() < all[j].name() })
	if *only != "" {
		all = slices.DeleteFunc(all, func(m mutant) bool { return !regexp.MustCompile(*only).MatchString(m.name()) })
	}
	if !*full {
		some := all[:0:0]
		for i, m := range all {
			if i%8 == 0 {
				some = append(some, m)
			}
		}
		all = some
	}
	verdicts, same := make([]bool, len(all)), make([]bool, len(all))
	was := printsOf(r.Pattern)
	var wg sync.WaitGroup
	gate := make(chan struct{}, runtime.GOMAXPROCS(0))
	for i := range all {
		wg.Add(1)
		gate <- struct{}{}
		go func() {
			defer wg.Done()
			defer func() { <-gate }()
			verdicts[i] = finds(folder, all[i])
			same[i] = !verdicts[i] && sameBooklets(folder, all[i], was)
		}()
	}
	wg.Wait()
	for i, m := range all {
		if same[i] {
			t.Logf("nothing that is printed changes: %s", m.name())
			continue
		}
		meant++
		if verdicts[i] {
			found++
		} else {
			alive = append(alive, m.name())
		}
	}
	return
}

// in gives the files of a sample with the slip in one of them.
func (m mutant) in(folder fstest.MapFS) fstest.MapFS {
	with := fstest.MapFS{}
	for name, f := range folder {
		with[name] = f
	}
	with[m.file] = &fstest.MapFile{Data: []byte(m.text)}
	return with
}

func finds(folder fstest.MapFS, m mutant) bool {
	r, err := compiler.Compile(m.in(folder))
	if err != nil {
		return true
	}
	return slices.ContainsFunc(r.Findings, counts)
}

// counts reports whether a finding tells something of a slip. That pieces have to be laid
// anew is so after most changes, and says nothing of what is wrong.
func counts(f finding.Finding) bool {
	return f.Severity != finding.Unchecked && !strings.HasPrefix(f.Rule, "lay-")
}

// survivors reads the list: "name = reason", with # before a comment.
func survivors(t *testing.T) map[string]string {
	src, err := os.ReadFile("testdata/survivors.txt")
	if err != nil {
		t.Fatal(err)
	}
	m := map[string]string{}
	reason := ""
	for _, l := range strings.Split(string(src), "\n") {
		switch {
		case strings.HasPrefix(l, "# because: "):
			reason = strings.TrimPrefix(l, "# because: ")
		case l == "" || strings.HasPrefix(l, "#"):
		case reason == "":
			t.Errorf("no reason stands above the survivor %s", l)
		default:
			m[l] = reason
		}
	}
	return m
}

// mutantsOf applies every operator at every place of one file.
func mutantsOf(sample, file, src string, touched map[string]touches) (all []mutant) {
	f := dsl.Parse(file, []byte(src))
	add := func(op string, start, end int, is string) {
		text := src[:start] + is + src[end:]
		all = append(all, mutant{sample: sample, operator: op, file: file, was: lineAround(src, start, end), is: is, text: text})
	}
	var walk func(parent *dsl.Sentence, list []*dsl.Sentence)
	walk = func(parent *dsl.Sentence, list []*dsl.Sentence) {
		for i, s := range list {
			start, end := extent(s)
			mutateSentence(parent, s, start, end, src, add)
			if i > 0 && swappable(list[i-1], s, touched) {
				a, b := list[i-1], s
				as, ae := extent(a)
				text := src[:as] + src[start:end] + src[ae:start] + src[as:ae] + src[end:]
				all = append(all, mutant{sample: sample, operator: "swap with the one before", file: file, was: head(a), is: head(b), text: text})
			}
			walk(s, s.Body)
		}
	}
	walk(nil, f.Sentences)
	return
}

func head(s *dsl.Sentence) string {
	var w []string
	for _, t := range s.Head {
		w = append(w, t.Text)
	}
	return strings.Join(w, " ")
}

func extent(s *dsl.Sentence) (start, end int) {
	start, end = s.Head[0].Start.Offset, s.Head[len(s.Head)-1].End().Offset
	if s.HasBody {
		end = s.Close.End().Offset
	}
	if n := len(s.Tail); n > 0 {
		end = s.Tail[n-1].End().Offset
	}
	return
}

func lineAround(src string, start, end int) string {
	from := strings.LastIndexByte(src[:start], '\n') + 1
	to := len(src)
	if i := strings.IndexByte(src[end:], '\n'); i >= 0 {
		to = end + i
	}
	if i := strings.IndexByte(src[from:to], '\n'); i >= 0 && i > start-from {
		to = from + i
	}
	return src[from:to] + fmt.Sprintf(" @%d", start-from)
}

// mutateSentence applies the operators that fit one sentence.
func mutateSentence(parent, s *dsl.Sentence, start, end int, src string, add func(string, int, int, string)) {
	inStep := parent != nil && (parent.First() == "step" || parent.First() == "on")
	switch s.First() {
	case "drawn":
		t := s.Head[len(s.Head)-1]
		add("drawn the other way", t.Start.Offset, t.End().Offset, map[string]string{"left": "right", "right": "left"}[t.Text])
	case "cut", "edges", "symmetric", "worn", "allow":
		if parent != nil && !inStep {
			add("drop the "+s.First()+" line", start, end, "")
		}
	case "seam", "piece", "fabric", "interfacing", "notion", "tape", "option", "choice", "dart", "step":
		add("delete the "+s.First(), start, end, "")
	}
	if _, ok := s.Node.(*dsl.Op); ok {
		add("delete the operation", start, end, "")
		add("do it twice", end, end, "\n    "+src[start:end])
	}
	if _, ok := s.Node.(*dsl.Cut); ok {
		mutateCut(s, add)
	}
	if n, ok := s.Node.(*dsl.Notion); ok && n.Count != nil {
		t := tokenAt(s, n.Count.Text)
		add("one more of the notion", t.Start.Offset, t.End().Offset, "7")
	}
	mutateGuard(s, add)
	mutateNames(s, add)
	mutateUnits(s, add)
}

func tokenAt(s *dsl.Sentence, text string) dsl.Token {
	for _, t := range s.Head {
		if t.Text == text {
			return t
		}
	}
	return s.Head[0]
}

func mutateCut(s *dsl.Sentence, add func(string, int, int, string)) {
	for i, t := range s.Head {
		at := func(op, is string) { add(op, t.Start.Offset, t.End().Offset, is) }
		switch {
		case i == 1 && t.Text == "1":
			at("cut two", "2")
		case i == 1:
			at("cut one fewer", fmt.Sprint(atoi(t.Text)-1))
			at("cut one more", fmt.Sprint(atoi(t.Text)+1))
		case t.Text == "mirrored":
			at("not mirrored", "")
			at("alike, not mirrored", "alike")
		case t.Text == "right":
			at("the other side up", "wrong")
		case t.Text == "wrong":
			at("the other side up", "right")
		case t.Text == "up" && s.Head[i-2].Text == "glue":
			at("glue down", "down")
		case t.Text == "down":
			at("glue up", "up")
		case t.Text == "fold":
			last := s.Head[i+1]
			add("not on the fold", s.Head[i-1].Start.Offset, last.End().Offset, "")
		}
	}
}

func atoi(s string) (n int) {
	for _, r := range s {
		n = n*10 + int(r-'0')
	}
	return
}

func mutateGuard(s *dsl.Sentence, add func(string, int, int, string)) {
	for _, toks := range [][]dsl.Token{s.Head, s.Tail} {
		for i, t := range toks {
			if !t.Is("when") {
				continue
			}
			last := toks[len(toks)-1]
			if i == 0 || s.First() != "edges" {
				add("drop the guard", t.Start.Offset, last.End().Offset, "")
			}
			if i+1 < len(toks) && toks[i+1].Is("not") {
				add("turn the guard round", toks[i+1].Start.Offset, toks[i+1].End().Offset, "")
			} else if i+2 == len(toks) {
				add("turn the guard round", t.End().Offset, t.End().Offset, " not")
			}
		}
	}
}

// mutateNames misspells each name that is used, and swaps left and right.
func mutateNames(s *dsl.Sentence, add func(string, int, int, string)) {
	switch s.Node.(type) {
	case *dsl.Op, *dsl.Seam, *dsl.Cut:
	default:
		return
	}
	for i, t := range s.Head {
		if t.Kind != dsl.Word || i == 0 {
			continue
		}
		dotted := i > 0 && s.Head[i-1].Is(".") || i+1 < len(s.Head) && s.Head[i+1].Is(".")
		switch {
		case t.Text == "left" && dotted:
			add("left and right", t.Start.Offset, t.End().Offset, "right")
		case t.Text == "right" && dotted:
			add("left and right", t.Start.Offset, t.End().Offset, "left")
		case dotted && len(t.Text) > 3:
			add("a misspelt name", t.Start.Offset, t.End().Offset, t.Text[:len(t.Text)-1])
		}
	}
}

// mutateUnits writes a measure in the other system by mistake.
func mutateUnits(s *dsl.Sentence, add func(string, int, int, string)) {
	for _, t := range s.Head {
		if t.Kind != dsl.Measure {
			continue
		}
		switch {
		case strings.HasSuffix(t.Text, "in"):
			add("another unit", t.Start.Offset, t.End().Offset, strings.TrimSuffix(t.Text, "in")+"cm")
		case strings.HasSuffix(t.Text, "cm"):
			add("another unit", t.Start.Offset, t.End().Offset, strings.TrimSuffix(t.Text, "cm")+"in")
		}
	}
}
