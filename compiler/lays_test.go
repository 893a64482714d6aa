package compiler_test

import (
	"fmt"
	"io/fs"
	"math/rand/v2"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"testing/fstest"

	"seamwarden/compiler"
	"seamwarden/compiler/booklet"
	"seamwarden/dsl/finding"
)

// napkins is an invented pattern: in view A a napkin, in view B a runner on the fold too.
const napkins = `pattern "Napkins" {
  allow 1cm
  sizes "sizes.yaml"
}

view A "Napkin" { figure "a.svg" "A napkin." }
view B "Napkin and runner" { figure "a.svg" "A napkin and a runner." }

fabric main "Main fabric" { widths 90cm, 140cm; shrinks 3% }

piece napkin 1 "Napkin" {
  symmetric
  separate
  edges top, side, base, end
  outline "napkin.svg"
  cut 2 main as first, second
}

piece runner 2 "Runner" when B {
  symmetric
  separate
  edges top, side, base, end
  outline "napkin.svg"
  cut 1 main on fold end
}

step hem "Hem the napkins" {
  hem napkin.top, napkin.side, napkin.base, napkin.end turning 1cm, 1cm
}

step runner "Hem the runner" when B {
  hem runner.top, runner.side, runner.base turning 1cm, 1cm
}
`

func napkinFolder() fstest.MapFS {
	group := func(size string, w, h int) string {
		return fmt.Sprintf(`<g id="size-%s"><path id="top_%[1]s" d="M0 0H%[2]d"/><path id="side_%[1]s" d="M%[2]d 0V%[3]d"/><path id="base_%[1]s" d="M%[2]d %[3]dH0"/><path id="end_%[1]s" d="M0 %[3]dV0"/></g>`, size, w, h)
	}
	file := func(s string) *fstest.MapFile { return &fstest.MapFile{Data: []byte(s)} }
	return fstest.MapFS{
		"pattern.seam": file(napkins),
		"sizes.yaml":   file("unit: cm\nsizes: [small, large]\npattern:\n  edge: { name: Edge, values: [40, 50] }\n"),
		"napkin.svg":   file(`<svg xmlns="http://www.w3.org/2000/svg" width="900mm" viewBox="0 0 900 900" data-allowance="none">` + group("small", 380, 400) + group("large", 420, 500) + `</svg>`),
		"a.svg":        file(`<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 10 10" width="10mm" height="10mm"><path d="M1 1H9V9H1Z"/></svg>`),
	}
}

func compiled(t testing.TB, folder fstest.MapFS) *compiler.Result {
	t.Helper()
	r, err := compiler.Compile(folder)
	if err != nil {
		t.Fatal(err)
	}
	return r
}

// laidNapkins has the lays of the pattern found and remembered.
func laidNapkins(t testing.TB) (fstest.MapFS, *compiler.Result) {
	t.Helper()
	folder := napkinFolder()
	r := compiled(t, folder)
	_, files, err := compiler.Renew([]*compiler.Lays{r.Lays()}, compiler.Renewal{Seconds: 0.02})
	if err != nil {
		t.Fatal(err)
	}
	folder[compiler.LaysFile] = &fstest.MapFile{Data: files[0].Encode()}
	return folder, compiled(t, folder)
}

// amounts are the numbers to buy that the booklet prints, by row and column.
func amounts(t testing.TB, r *compiler.Result) map[string]string {
	t.Helper()
	chosen, err := compiler.Choose(r.Pattern, compiler.Choice{})
	if err != nil {
		t.Fatal(err)
	}
	b, err := compiler.Booklet(r.Pattern, chosen)
	if err != nil {
		t.Fatal(err)
	}
	all := map[string]string{}
	for _, ch := range b.Chapters {
		for _, block := range ch.Blocks {
			table, ok := block.(*booklet.Table)
			if !ok || !strings.Contains(table.Caption, "how much to buy") {
				continue
			}
			for _, row := range table.Rows {
				for i, c := range row.Cells[1:] {
					if s := booklet.Plain(c.Text); s != "–" {
						key := fmt.Sprintf("%s|%s|%s|%d", table.Caption, row.When, booklet.Plain(row.Cells[0].Text), i)
						all[strings.ReplaceAll(key, "\u00a0", " ")] = s
					}
				}
			}
		}
	}
	return all
}

func rules(list []finding.Finding) (all []string) {
	for _, f := range list {
		if f.Severity != finding.Unchecked {
			all = append(all, f.Rule+": "+f.Headline)
		}
	}
	return
}

func TestWhatToBuyIsComputedFromLays(t *testing.T) {
	bare := compiled(t, napkinFolder())
	if got := rules(bare.Findings); len(got) != 1 || !strings.HasPrefix(got[0], "lay-missing") || len(amounts(t, bare)) != 0 {
		t.Errorf("without lays: %q, %v", got, amounts(t, bare))
	}
	_, r := laidNapkins(t)
	if got := rules(r.Findings); len(got) > 0 {
		t.Errorf("with lays: %q", got)
	}
	got := amounts(t, r)
	// Two napkins of 38 by 40 cm, hemmed with 2 cm all round, lie side by side on 90 cm:
	// 44 cm, before the cloth shrinks by 3 % 45.4 cm, which is bought as 0.5 m or 1/2 yd.
	if s := got["Fabric and interfacing: how much to buy, in metres|In view A|Main fabric, 90 cm (36 in)|0"]; s != "0.5" {
		t.Errorf("a small napkin takes %q: %v", s, got)
	}
	if s := got["Fabric and interfacing: how much to buy, in yards|In view A|Main fabric, 90 cm (36 in)|0"]; s != "½" {
		t.Errorf("a small napkin takes %q", s)
	}
	if len(got) != 2*2*2*2 {
		t.Errorf("%d amounts: %v", len(got), got)
	}
}

// Whatever becomes of the file, no other number is printed; what is not printed any
// more is found fault with.
func TestALostOrEditedFileNeverChangesANumber(t *testing.T) {
	folder, r := laidNapkins(t)
	want := amounts(t, r)
	src := string(folder[compiler.LaysFile].Data)
	judge := func(name, text string) {
		t.Helper()
		folder[compiler.LaysFile] = &fstest.MapFile{Data: []byte(text)}
		r := compiled(t, folder)
		got := amounts(t, r)
		for k, v := range got {
			if want[k] != v {
				t.Errorf("%s: %s is %s, and was %s", name, k, v, want[k])
			}
		}
		if len(got) < len(want) && len(rules(r.Findings)) == 0 {
			t.Errorf("%s: numbers are gone without a finding\n%s", name, text)
		}
	}
	lines := strings.SplitAfter(src, "\n")
	for i, line := range lines {
		judge(fmt.Sprintf("without line %d, %q", i+1, line), strings.Join(append(append([]string(nil), lines[:i]...), lines[i+1:]...), ""))
		judge(fmt.Sprintf("cut off at line %d", i+1), strings.Join(lines[:i], ""))
	}
	random := rand.New(rand.NewPCG(1, 2))
	for range 300 {
		at := random.IntN(len(src))
		judge(fmt.Sprintf("another byte at %d", at), src[:at]+string(rune(' '+random.IntN(95)))+src[at+1:])
	}
	delete(folder, compiler.LaysFile)
	if r := compiled(t, folder); len(amounts(t, r)) > 0 || len(rules(r.Findings)) != 1 {
		t.Errorf("without the file: %q", rules(r.Findings))
	}
}

// Every lay of the samples holds, and each that is wanted is remembered.
func TestEveryLayOfASampleHolds(t *testing.T) {
	names, err := filepath.Glob("../samples/*/" + compiler.LaysFile)
	if err != nil {
		t.Fatal(err)
	}
	for _, name := range names {
		r, err := compiler.Compile(os.DirFS(filepath.Dir(name)))
		if err != nil {
			t.Fatal(err)
		}
		for _, l := range r.Lays().Wanted {
			if l.Found == nil {
				t.Errorf("%s: no lay of %s is remembered", name, l.Label)
				continue
			}
			if n, err := l.Job.Check(*l.Found); err != nil || n != l.Found.Length || l.Found.Cloth() < l.Job.Area() {
				t.Errorf("%s: %s: %v", name, l.Label, err)
			}
		}
	}
}

// While something is wrong with the pattern itself, it is not told as well which lays are
// out of date because of it; once that is mended, it is.
func TestOneMistakeIsToldBeforeItsLays(t *testing.T) {
	for _, c := range []struct{ old, new, want string }{
		{"cut 1 fusing glue side up\n", "", "interfacing-not-cut"},
		{"allow 5/8in", "allow 1/2in", "lay-stale"},
	} {
		folder := fstest.MapFS{}
		if err := fs.WalkDir(os.DirFS("../samples/dusk-skirt"), ".", func(name string, d fs.DirEntry, err error) error {
			if err == nil && !d.IsDir() && !strings.HasPrefix(name, "out/") {
				folder[name] = &fstest.MapFile{}
				folder[name].Data, err = os.ReadFile("../samples/dusk-skirt/" + name)
			}
			return err
		}); err != nil {
			t.Fatal(err)
		}
		src := string(folder[compiler.Root].Data)
		if strings.Count(src, c.old) == 0 {
			t.Fatalf("the sample has no %q", c.old)
		}
		folder[compiler.Root].Data = []byte(strings.Replace(src, c.old, c.new, 1))
		r, err := compiler.Compile(folder)
		if err != nil {
			t.Fatal(err)
		}
		var told []string
		for _, f := range r.Findings {
			if f.Severity != finding.Unchecked {
				told = append(told, f.Rule)
			}
		}
		if len(told) != 1 || told[0] != c.want {
			t.Errorf("%q instead of %q: %v, want one %s", c.new, c.old, told, c.want)
		}
	}
}
