package compiler_test

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"testing/fstest"

	"seamwarden/compiler"
	"seamwarden/dsl"
	"seamwarden/dsl/finding"
)

// defect is one entry of the catalogue of defects in defects_table_test.go: what
// testers find in pattern instructions. Found names the patterns in
// testdata/defects that have it, and only it; Open says what is not decided yet,
// and why. An entry has one of them, or both if it is decided in part.
type defect struct {
	id    string   // "01" to "80", or of those that the list by trade adds "D35"
	trade []string // its numbers in the list by trade, D01 to D54
	what  string
	found []has
	open  string
}

// has says that a rule finds the defect in a pattern, with these words.
type has struct{ pattern, rule, says string }

const defectFolder = "testdata/defects/"

// TestDefectsAreCounted holds the catalogue against its own numbers.
func TestDefectsAreCounted(t *testing.T) {
	ids, trade, decided, part := map[string]int{}, map[string]int{}, 0, 0
	var waiting []string
	for _, d := range defects {
		ids[d.id]++
		for _, n := range d.trade {
			trade[n]++
		}
		switch {
		case d.open == "" && len(d.found) == 0:
			t.Errorf("%s is neither found nor said to be open", d.id)
		case d.open == "":
			decided++
		case len(d.found) > 0:
			part++
			waiting = append(waiting, fmt.Sprintf("%s in part: %s: %s", d.id, d.what, d.open))
		default:
			waiting = append(waiting, fmt.Sprintf("%s: %s: %s", d.id, d.what, d.open))
		}
	}
	for i := 1; i <= 80; i++ {
		if n := ids[fmt.Sprintf("%02d", i)]; n != 1 {
			t.Errorf("the defect %02d has %d entries", i, n)
		}
	}
	for i := 1; i <= 54; i++ {
		if n := trade[fmt.Sprintf("D%02d", i)]; n != 1 {
			t.Errorf("D%02d of the list by trade is named %d times", i, n)
		}
	}
	t.Logf("%d defects: %d found, %d found in part, %d not decided", len(defects), decided, part, len(defects)-decided-part)
	for _, w := range waiting {
		t.Log(w)
	}
}

// TestDefectsAreFound compiles each pattern with a defect: it is found, and nothing
// else is.
func TestDefectsAreFound(t *testing.T) {
	listed := map[string]bool{}
	for _, d := range defects {
		for _, h := range d.found {
			listed[d.id+"-"+h.pattern] = true
			t.Run(d.id+"-"+h.pattern, func(t *testing.T) {
				all := judged(t, d.id+"-"+h.pattern)
				if len(all) != 1 || all[0].Rule != h.rule || !strings.Contains(said(all[0]), h.says) {
					t.Errorf("%s: wanted %s, “%s”; there is:%s", d.what, h.rule, h.says, headlines(all))
				}
			})
		}
	}
	for _, name := range defectPatterns(t) {
		if !listed[name] && !strings.HasSuffix(name, "right") {
			t.Errorf("%s is in no entry", name)
		}
	}
}

// TestDefectsAreNotSeenInWhatIsRight compiles patterns that look like a defect and
// are right.
func TestDefectsAreNotSeenInWhatIsRight(t *testing.T) {
	n := 0
	for _, name := range defectPatterns(t) {
		if strings.HasSuffix(name, "right") {
			n++
			t.Run(name, func(t *testing.T) {
				if all := judged(t, name); len(all) > 0 {
					t.Errorf("in a pattern that is right:%s", headlines(all))
				}
			})
		}
	}
	if n < 20 {
		t.Errorf("only %d patterns that are right", n)
	}
}

// defectPatterns lists the patterns by name.
func defectPatterns(t *testing.T) (names []string) {
	files, err := filepath.Glob(defectFolder + "*.seam")
	if err != nil || len(files) == 0 {
		t.Fatal("no patterns", err)
	}
	for _, f := range files {
		names = append(names, strings.TrimSuffix(filepath.Base(f), ".seam"))
	}
	return
}

// judged compiles a pattern of the catalogue; a file NAME.other lies beside it as
// other. What is listed as not checked is left out.
func judged(t *testing.T, name string) (all []finding.Finding) {
	t.Helper()
	folder := fstest.MapFS{}
	files, _ := filepath.Glob(defectFolder + name + ".*")
	for _, file := range files {
		src, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		as := strings.TrimPrefix(filepath.Base(file), name+".")
		if as == "seam" {
			as = compiler.Root
			if out, ok := dsl.Format(dsl.Parse(as, src)); !ok || string(out) != string(src) {
				t.Errorf("not in canonical form")
			}
		}
		folder[as] = &fstest.MapFile{Data: src}
	}
	r, err := compiler.Compile(folder)
	if err != nil {
		t.Fatal(err)
	}
	for _, f := range r.Findings {
		if f.Severity != finding.Unchecked {
			all = append(all, f)
		}
	}
	return
}

func headlines(all []finding.Finding) string {
	s := ""
	for _, f := range all {
		s += fmt.Sprintf("\n  %s: %s [%s]", f.Severity, said(f), f.Rule)
	}
	return s
}

// said is the headline with the garments in which it holds.
func said(f finding.Finding) string {
	if f.When == "" {
		return f.Headline
	}
	return strings.TrimSuffix(f.Headline, ".") + ": " + f.When
}
