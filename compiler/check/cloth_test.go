package check_test

import (
	"fmt"
	"strings"
	"testing"

	"seamwarden/compiler"
	"seamwarden/compiler/booklet"
	"seamwarden/compiler/check"
	"seamwarden/compiler/lay"
	"seamwarden/compiler/measure"
	"seamwarden/dsl/finding"
)

// skirt is a pattern of one panel, 50 cm wide and 70 cm long, that is cut twice on the
// fold: 2 x 100 x 70 cm of cloth, which is 1 m of cloth 140 cm wide.
const skirt = `pattern "Panel Skirt" {
  allow 1cm
  finish seams apart with overlock, press open
  HEAD
}

view A "Short"

view B "Long"

fabric main "Main fabric" { widths 140cm; HOW }

NEEDS

piece panel 1 "Panel" {
  edges waist, side, hem, centre
  outline "panel.svg"
  cut 2 main on fold centre as back, front
}

seam side joins panel.back.side to panel.front.side

step sew "Sew the skirt" {
  sew side
  hem panel.waist turning 1cm, 1cm
  hem panel.hem turning 1cm, 2cm when A
  hem panel.hem turning 1cm, 4cm when B
}
`

const panel = `<svg xmlns="http://www.w3.org/2000/svg" data-allowance="included" width="520mm" viewBox="0 0 520 720">
<path id="waist" d="M10 10H510"/><path id="side" d="M510 10V710"/><path id="hem" d="M510 710H10"/><path id="centre" d="M10 710V10"/></svg>`

const threeSizes = `unit: cm
sizes: [S, M, L]
body:
  hip: { name: Hip girth, values: [88, 92, 96] }
`

// skirtWith puts sentences into the skirt, and a table beside it if it is not "".
func skirtWith(head, how, needs, table string) map[string]string {
	files := map[string]string{"panel.svg": panel}
	if table != "" {
		head += "\n  sizes \"sizes.yaml\""
		files["sizes.yaml"] = table
	}
	files[compiler.Root] = strings.NewReplacer("HEAD", head, "HOW", how, "NEEDS", needs).Replace(skirt)
	return files
}

// said words what counts: rule, headline and garments.
func said(all []finding.Finding) string {
	var out []string
	for _, f := range counting(all) {
		if !strings.HasPrefix(f.Rule, "lay") {
			out = append(out, strings.TrimSuffix(fmt.Sprintf("%s: %s %s", f.Rule, f.Headline, f.When), " "))
		}
	}
	return strings.Join(out, "\n")
}

// TestPromises tells amounts in sentences and tables. What is found follows from the
// numbers beside each case.
func TestPromises(t *testing.T) {
	for _, c := range []struct {
		title, head, needs, table, want string
	}{
		{"enough in every garment", "", "needs 1.5m of main, width 140cm", "", ""},
		{"in the head", "needs 1.5m of main", "", "", ""},
		{"exactly the area", "", "needs 1m of main, width 140cm", "", ""},
		{"less than the area", "", "needs 90cm of main, width 140cm", "",
			"cloth-less-than-its-pieces: 90cm of main fabric lying 140cm wide is told to be enough, and the cut parts alone fill 1m of it."},
		{"less in one view", "", "needs 1.5m of main in view A\nneeds 0.9m of main in view B", "",
			"cloth-less-than-its-pieces: 0.9m of main fabric lying 140cm wide is told to be enough, and the cut parts alone fill 1m of it. in view B"},
		{"less in one size", "", "needs 0.9m of main, size S\nneeds 1.5m of main, size M\nneeds 1.5m of main, size L", threeSizes,
			"cloth-less-than-its-pieces: In size S, 0.9m of main fabric lying 140cm wide is told to be enough, and the cut parts alone fill 1m of it. in size S"},
		{"a view without", "", "needs 1.5m of main in view A", "",
			"cloth-not-told: It is not told how much of main fabric to buy. in view B"},
		{"a size between without", "", "needs 1.5m of main, size S\nneeds 1.6m of main, size L", threeSizes,
			"cloth-not-told: It is not told how much of main fabric to buy. in size M"},
		{"no such size", "", "needs 1.5m of main, size XL\nneeds 1.5m of main", threeSizes,
			"name-unknown: This pattern has no size XL."},
		{"sizes where there are none", "", "needs 1.5m of main, size 12\nneeds 1.5m of main", "",
			"name-unknown: This pattern has no size 12."},
		{"no such view", "", "needs 1.5m of main in view C\nneeds 1.5m of main", "",
			"name-unknown: This pattern has no view C."},
		{"no such fabric", "", "needs 1.5m of lining\nneeds 1.5m of main", "",
			"name-unknown: No fabric or interfacing called `lining` is declared."},
		{"no such width", "", "needs 1.5m of main, width 150cm", "",
			"cloth-width-not-offered: How much of main fabric lying 150cm wide to buy is told, and it is offered in 140cm."},
		{"a size that shrinks", "", "needs 1.6m of main, size S\nneeds 1.5m of main, size M\nneeds 1.6m of main, size L", threeSizes,
			"cloth-falls-with-size: Size M needs 1.5m of main fabric, and the smaller size S needs 1.6m."},
		{"one size has an amount of its own", "", "needs 1.5m of main\nneeds 1.6m of main, size L", threeSizes,
			"cloth-told-differently: In size L, 1.6m of main fabric is told to be enough, and 1.5m too. in size L"},
		{"a sentence and a row", "", "needs 1.6m of main in view A, size L, width 140cm", threeSizes + "cloth:\n  main: { of: main, width: 140cm, unit: m, values: [1.5, 1.6, 1.6] }\n",
			"cloth-told-twice: How much of main fabric lying 140cm wide to buy is told twice. in view A in size L"},
		{"a sentence and a row that differ", "", "needs 1.7m of main in view A, size L, width 140cm", threeSizes + "cloth:\n  main: { of: main, width: 140cm, unit: m, values: [1.5, 1.6, 1.6] }\n",
			"cloth-told-differently: In size L, 1.7m of main fabric lying 140cm wide is told to be enough, and 1.6m too. in view A in size L"},
		{"a row that is too short in the smaller sizes", "", "", threeSizes + "cloth:\n  main: { of: main, width: 140cm, unit: m, values: [0.8, 0.9, 1] }\n",
			"cloth-less-than-its-pieces: In size S, 0.8m of main fabric lying 140cm wide is told to be enough, and the cut parts alone fill 1m of it. in sizes S and M"},
		{"nothing is to spare", "spare 200%", "needs 1.5m of main", "", "measure-not-understood: 200% is not how much cloth is to spare."},
	} {
		t.Run(c.title, func(t *testing.T) {
			found, sources := findings(t, skirtWith(c.head, "", c.needs, c.table))
			if got := said(found); got != c.want {
				t.Errorf("it says\n%s\nand should say\n%s\n%s", got, c.want, written(found, sources))
			}
		})
	}
}

// TestPromisesInAFile reads the rows of a table of cloth, finds what is wrong with them at
// their place, and prints them.
func TestPromisesInAFile(t *testing.T) {
	files := skirtWith("", "", `needs "yardage.yaml"`, threeSizes)
	files["yardage.yaml"] = "unit: m\ncloth:\n  main: { of: main, width: 140cm, values: [1.5, 0.8, 1.6] }\n"
	found, _ := findings(t, files)
	if len(counting(found)) != 1 || found[0].Place.File != "yardage.yaml" || found[0].Place.Start.Line != 3 || counting(found)[0].Rule != "cloth-falls-with-size" {
		t.Errorf("%+v", found)
	}
	files["yardage.yaml"] = "main: { of: main, width: 140cm, values: [1.5, 1.5, 1.6] }\n"
	if found, _ := findings(t, files); len(counting(found)) != 1 || counting(found)[0].Rule != "table-unreadable" {
		t.Errorf("%+v", found)
	}
	delete(files, "yardage.yaml")
	if found, _ := findings(t, files); len(counting(found)) != 1 || counting(found)[0].Rule != "file-unreadable" {
		t.Errorf("%+v", found)
	}
	files = skirtWith("", "", `needs "yardage.yaml"`, "")
	if found, _ := findings(t, files); len(counting(found)) != 1 || counting(found)[0].Headline != "The amounts in yardage.yaml go by size, and this pattern has no sizes." {
		t.Errorf("%+v", found)
	}
}

// TestPromisesArePrinted: a sentence stands in the shopping list as a row does.
func TestPromisesArePrinted(t *testing.T) {
	for _, c := range []struct{ needs, table, want string }{
		{"needs 1.5m of main, width 140cm", "", "Material|How much\nMain fabric, 140 cm (55 in)|1.5"},
		{"needs 1.5m of main, size S\nneeds 1.6m of main, size M\nneeds 1 7/8yd of main, size L", threeSizes, "Material|S|M|L\nMain fabric|1.5|1.6|1.8"},
	} {
		r, err := compiler.Compile(mapFS(skirtWith("", "", c.needs, c.table)))
		if err != nil {
			t.Fatal(err)
		}
		all, err := compiler.Choose(r.Pattern, compiler.Choice{})
		if err != nil {
			t.Fatal(err)
		}
		b, err := compiler.Booklet(r.Pattern, all)
		if err != nil {
			t.Fatal(err)
		}
		if got := inMetres(b); got != c.want {
			t.Errorf("%s\nprints\n%s\nwant\n%s", c.needs, got, c.want)
		}
	}
}

// inMetres gives the table of amounts in metres as text.
func inMetres(b *booklet.Booklet) string {
	var out []string
	for _, ch := range b.Chapters {
		for _, x := range ch.Blocks {
			t, ok := x.(*booklet.Table)
			if !ok || !strings.HasSuffix(t.Caption, "in metres") {
				continue
			}
			var head []string
			for _, c := range t.Columns {
				head = append(head, booklet.Plain(c.Head))
			}
			out = append(out, strings.Join(head, "|"))
			for _, r := range t.Rows {
				var cells []string
				for _, c := range r.Cells {
					cells = append(cells, strings.ReplaceAll(booklet.Plain(c.Text), "\u00a0", " "))
				}
				out = append(out, strings.Join(cells, "|"))
			}
		}
	}
	return strings.Join(out, "\n")
}

// TestPromisesBesideLays: two panels of 100 cm lie behind one another on cloth of 140 cm,
// 1.40 m; what shrinks by 3 % is cut from 1.40 m ÷ 0.97 = 1.443 m.
func TestPromisesBesideLays(t *testing.T) {
	for _, c := range []struct{ title, head, how, needs, want string }{
		{"just enough", "", "", "needs 1.4m of main", ""},
		{"less than the lay", "", "", "needs 1.3m of main",
			"cloth-less-than-the-lay: 1.3m of main fabric lying 140cm wide is told to be enough, and the shortest lay that was found takes 1.4m."},
		{"impossible is said once", "", "", "needs 0.9m of main",
			"cloth-less-than-its-pieces: 0.9m of main fabric lying 140cm wide is told to be enough, and the cut parts alone fill 1m of it."},
		{"what shrinks needs more", "", "shrinks 3%", "needs 1.4m of main",
			"cloth-less-than-the-lay: 1.4m of main fabric lying 140cm wide is told to be enough, and the shortest lay that was found takes 1.45m."},
		{"15 % and what is rounded up", "", "", "needs 1.7m of main", ""}, // 1.4 × 1.15 = 1.61
		{"more than that", "", "", "needs 1.8m of main",
			"cloth-more-than-the-lay: 1.8m of main fabric lying 140cm wide is told, and the lay takes 1.4m."},
		{"more is spared", "spare 25%", "", "needs 1.8m of main", ""}, // 1.75
		{"nothing is spared", "spare 0%", "", "needs 1.5m of main",
			"cloth-more-than-the-lay: 1.5m of main fabric lying 140cm wide is told, and the lay takes 1.4m."},
		{"in yards", "", "", "needs 1 1/4yd of main", // 1.40 m is 1.531 yd
			"cloth-less-than-the-lay: 1 1/4yd of main fabric lying 140cm wide is told to be enough, and the shortest lay that was found takes 1 9/16yd."},
		{"one view more than it needs", "", "", "needs 1.5m of main in view A\nneeds 2.5m of main in view B",
			"cloth-more-than-the-lay: 2.5m of main fabric lying 140cm wide is told, and the lay takes 1.4m. in view B"},
		{"what is laid is told", "", "", "needs 1.5m of main in view A", ""},
	} {
		t.Run(c.title, func(t *testing.T) {
			r, err := compiler.Compile(mapFS(skirtWith(c.head, c.how, c.needs, "")))
			if err != nil {
				t.Fatal(err)
			}
			for _, l := range r.Pattern.Layings() {
				found, err := l.Job.Find(lay.Effort{Work: 20_000})
				if err != nil || lay.Measure(found.Cloth()).Cmp(measure.Of(1401, 1, measure.Millimetre)) > 0 {
					t.Fatalf("%v, %v", lay.Measure(found.Cloth()), err)
				}
				l.Found = &found
			}
			if got := said(check.Run(r.Pattern, false)); got != c.want {
				t.Errorf("it says\n%s\nand should say\n%s", got, c.want)
			}
		})
	}
}
