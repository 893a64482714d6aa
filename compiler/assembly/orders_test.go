package assembly_test

import (
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
	"testing/fstest"

	"gopkg.in/yaml.v3"

	"seamwarden/compiler"
	"seamwarden/compiler/assembly"
	"seamwarden/compiler/check"
	"seamwarden/dsl/finding"
)

// ordered is a small pattern cut into its steps, so that they can be moved.
type ordered struct {
	head, words string
	steps       []movable
}

// movable is a step with its text; before is what stands between it and the step
// before, such as the end of a section.
type movable struct{ id, before, text string }

var stepText = regexp.MustCompile(`(?ms)^( *)step ([a-z-]+) .*?^ *\}\n`)

// readOrder reads a pattern of testdata/orders.
func readOrder(t testing.TB, name string) *ordered {
	t.Helper()
	src, err := os.ReadFile(filepath.Join("testdata", "orders", name+".seam"))
	if err != nil {
		t.Fatal(err)
	}
	words, err := os.ReadFile(filepath.Join("testdata", "orders", "words.seam"))
	if err != nil {
		t.Fatal(err)
	}
	o := &ordered{words: string(words)}
	text, at := string(src), 0
	for _, m := range stepText.FindAllStringSubmatchIndex(text, -1) {
		o.steps = append(o.steps, movable{id: text[m[4]:m[5]], before: text[at:m[0]], text: text[m[0]:m[1]]})
		at = m[1]
	}
	o.head = text[at:] // what stands after the last step
	return o
}

// String puts the pattern together again.
func (o *ordered) String() string {
	var b strings.Builder
	for _, s := range o.steps {
		b.WriteString(s.before + s.text)
	}
	return b.String() + o.head
}

// at finds a step by its name in the list of orders: "face neck" is face-neck.
func (o *ordered) at(t testing.TB, name string) int {
	t.Helper()
	for i, s := range o.steps {
		if s.id == stepID(name) {
			return i
		}
	}
	t.Fatalf("no step %q", name)
	return -1
}

// move takes a step out and puts it in front of, or after, another.
func (o *ordered) move(t testing.TB, name string, before bool, other string) *ordered {
	t.Helper()
	from := o.at(t, name)
	m := &ordered{head: o.head, words: o.words}
	for i, s := range o.steps {
		if i == from {
			s.text = ""
		}
		if i == o.at(t, other) {
			if before {
				s.text = o.steps[from].text + s.text
			} else {
				s.text += o.steps[from].text
			}
		}
		m.steps = append(m.steps, s)
	}
	return m
}

// drop takes a step out.
func (o *ordered) drop(t testing.TB, name string) *ordered {
	t.Helper()
	m := &ordered{head: o.head, words: o.words, steps: append([]movable(nil), o.steps...)}
	m.steps[o.at(t, name)].text = ""
	return m
}

// compile compiles it.
func (o *ordered) compile(t testing.TB) *compiler.Result {
	t.Helper()
	r, err := compiler.Compile(fstest.MapFS{"pattern.seam": {Data: []byte(o.String())}, "words.seam": {Data: []byte(o.words)}})
	if err != nil {
		t.Fatal(err)
	}
	return r
}

// found gives what is found, without what is not checked, and its text.
func found(r *compiler.Result) (all []finding.Finding, text string) {
	var b strings.Builder
	w := &finding.Writer{Out: &b, Sources: r.Sources}
	for _, f := range r.Findings {
		if f.Severity != finding.Unchecked {
			all = append(all, f)
			w.Write(f)
		}
	}
	return all, b.String()
}

// stepID is the name of a step in the source: "face neck" is face-neck.
func stepID(name string) string { return strings.ReplaceAll(name, " ", "-") }

// between reports whether a trouble names an operation of each of two steps.
func between(x assembly.Trouble, a, b string) bool {
	if x.By == nil {
		return false
	}
	p, q := x.Op.Step.ID, x.By.Step.ID
	return p == a && q == b || p == b && q == a
}

// TestRightOrdersAreClean compiles the six orders as they should be.
func TestRightOrdersAreClean(t *testing.T) {
	for _, c := range orderCases {
		t.Run(c.file, func(t *testing.T) {
			if all, text := found(readOrder(t, c.file).compile(t)); len(all) > 0 {
				t.Errorf("a right order gives:\n%s", text)
			}
		})
	}
}

// TestEveryPairIsFound turns every pair round, in both ways, and looks for a
// trouble of the kind that means it. In one of the two ways it must name both
// steps, and a rule of order must report something of its severity.
func TestEveryPairIsFound(t *testing.T) {
	pairs := 0
	for _, c := range orderCases {
		for _, m := range c.must {
			pairs++
			t.Run(c.file+"/"+m.before+" before "+m.after, func(t *testing.T) { c.turnRound(t, m) })
		}
	}
	if pairs != 54 {
		t.Errorf("%d pairs, and the orders have 54", pairs)
	}
}

func (c orderCase) turnRound(t *testing.T, m must) {
	o := readOrder(t, c.file)
	some, named, told := false, false, false
	for _, x := range []*ordered{o.move(t, m.after, true, m.before), o.move(t, m.before, false, m.after)} {
		r := x.compile(t)
		for _, y := range assembly.Play(r.Pattern) {
			some = some || y.Kind == m.kind
			named = named || y.Kind == m.kind && between(y, stepID(m.before), stepID(m.after))
		}
		told = told || reports(r, m.kind.Soft())
	}
	reason := unfound[c.file+": "+m.before+", "+m.after]
	switch {
	case !some:
		t.Error("nothing of its kind is found")
	case named && reason != "":
		t.Errorf("it is listed as not found by itself, since %s; and it is found", reason)
	case !named && reason == "":
		t.Error("what is found does not name the two steps")
	case !told:
		t.Error("no rule of order reports it")
	}
}

// reports says whether a rule of order reports something: advice at least, or what
// weighs more.
func reports(r *compiler.Result, advice bool) bool {
	all, _ := found(r)
	for _, f := range all {
		if rule := check.Find(f.Rule); rule != nil && rule.Category == "order" && (advice || f.Severity < finding.Advice) {
			return true
		}
	}
	return false
}

// TestEveryMutantIsFound makes the fourteen mutants.
func TestEveryMutantIsFound(t *testing.T) {
	mutants := 0
	for _, c := range orderCases {
		for _, m := range c.mutants {
			mutants++
			t.Run(c.file+"/"+m.d+" "+m.drop+m.move, func(t *testing.T) { c.mutate(t, m) })
		}
	}
	if mutants != 14 {
		t.Errorf("%d mutants, and the orders have 14", mutants)
	}
}

func (c orderCase) mutate(t *testing.T, m broken) {
	o := readOrder(t, c.file)
	if m.drop != "" {
		o = o.drop(t, m.drop)
	} else {
		o = o.move(t, m.move, m.before, m.other)
	}
	r := o.compile(t)
	all, text := found(r)
	meant := false
	for _, f := range all {
		meant = meant || m.rule != "" && f.Rule == m.rule
	}
	for _, x := range assembly.Play(r.Pattern) {
		meant = meant || m.rule == "" && x.Kind == m.kind
	}
	if !meant || len(all) == 0 {
		t.Errorf("nothing means the defect %s; found:\n%s", m.d, text)
	}
}

// TestOrdersAreThoseOfTheTable compares the lists above with the table that they
// were taken from.
func TestOrdersAreThoseOfTheTable(t *testing.T) {
	src, err := os.ReadFile(filepath.Join("..", "..", "..", "shared", "reference", "trade", "order_examples.yaml"))
	if err != nil {
		t.Skip("the reference table of orders is not at hand")
	}
	var parts []struct {
		Steps   []string
		Must    [][]string
		Mutants []map[string]any
	}
	if err := yaml.Unmarshal(src, &parts); err != nil {
		t.Fatal(err)
	}
	if len(parts) != len(orderCases) {
		t.Fatalf("the table has %d orders, and here are %d", len(parts), len(orderCases))
	}
	for n, p := range parts {
		c := orderCases[n]
		o, last := readOrder(t, c.file), -1
		for _, s := range p.Steps {
			if at := o.at(t, s); at < last {
				t.Errorf("%s: %s stands in another place than in the table", c.file, s)
			} else {
				last = at
			}
		}
		listed := map[string]bool{}
		for _, m := range c.must {
			listed[m.before+"|"+m.after] = true
		}
		for _, m := range p.Must {
			if !listed[m[0]+"|"+m[1]] {
				t.Errorf("%s: the pair %v is not tested", c.file, m)
			}
		}
		if len(p.Must) != len(c.must) || len(p.Mutants) != len(c.mutants) {
			t.Errorf("%s: %d pairs and %d mutants, and the table has %d and %d", c.file, len(c.must), len(c.mutants), len(p.Must), len(p.Mutants))
		}
		for i, m := range p.Mutants {
			if m["defect"] != c.mutants[i].d {
				t.Errorf("%s: mutant %d makes %s, and in the table %s", c.file, i, c.mutants[i].d, m["defect"])
			}
		}
	}
}
