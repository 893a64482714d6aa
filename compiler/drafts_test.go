package compiler_test

import (
	"strings"
	"testing"
	"testing/fstest"

	"seamwarden/compiler"
	"seamwarden/compiler/booklet"
	"seamwarden/dsl/finding"
)

const twoDrafts = `pattern "Two Cups" {
  allow 1cm
  sizes "sizes.yaml"
  finish seams together with overlock, press open
}

option full "Drawn for a D cup"

fabric main "Main fabric" { widths 140cm }

elastic band "Elastic" { length sizes.band }

piece front 1 "Front" {
  symmetric
  edges top, side, hem, other-side
  cut 2 main as over, under
}

seam side joins front.over.side to front.under.side

seam other-side joins front.over.other-side to front.under.other-side

step sew "Sew the sides" {
  sew side, other-side
  hem front.top turning 1cm, 1cm
  hem front.hem turning 1cm, 2cm
  """
  For a bust of {body bust}, cut {length band} of elastic and leave {finished chest}.
  """
  insert band into front.top
}
`

const cups = `unit: cm
sizes: [36, 38, 40]
body:
  underbust: { name: Underbust girth, values: [72, 76, 80] }
finished:
  chest: { name: Chest, values: [104, 108, 112] }
drafts:
  b-cup:
    name: B cup
    WHEN-B
    body: { bust: { name: Bust girth, values: [86, 90, 94] } }
    pattern: { band: { name: Elastic, values: [70, 74, 78] } }
  d-cup:
    name: D cup
    WHEN-D
    sizes: [38, 40]
    body: { bust: { name: Bust girth, values: [96, 100] } }
    pattern: { band: { name: Elastic, values: [75, 79] } }
`

// TestDraftsInText fetches rows that stand in drafts, and lists lengths by size for each.
func TestDraftsInText(t *testing.T) {
	for _, c := range []struct {
		title, whenB, whenD string
		choice              compiler.Choice
		sentence            string
		tables              int
	}{
		{"all that is left", "", "", compiler.Choice{}, "For a bust of 86 cm to 94 cm (B cup); 96 cm to 100 cm (D cup), cut 70 cm to 78 cm (B cup); 75 cm to 79 cm (D cup) of elastic and leave 104 cm to 112 cm.", 2},
		{"a size that one has", "", "", compiler.Choice{Size: "36"}, "For a bust of 86 cm (B cup), cut 70 cm (B cup) of elastic and leave 104 cm.", 0},
		{"the draft is chosen", "when: not full", "when: full", compiler.Choice{With: []string{"full"}}, "For a bust of 96 cm to 100 cm, cut 75 cm to 79 cm of elastic and leave 104 cm to 112 cm.", 1},
	} {
		t.Run(c.title, func(t *testing.T) {
			table := strings.NewReplacer("WHEN-B", c.whenB, "WHEN-D", c.whenD).Replace(cups)
			r, err := compiler.Compile(fstest.MapFS{compiler.Root: {Data: []byte(twoDrafts)}, "sizes.yaml": {Data: []byte(table)}})
			if err != nil {
				t.Fatal(err)
			}
			for _, f := range r.Findings {
				if f.Severity == finding.Error {
					t.Errorf("%s: %s", f.Rule, f.Headline)
				}
			}
			a, err := compiler.Choose(r.Pattern, c.choice)
			if err != nil {
				t.Fatal(err)
			}
			b, err := compiler.Booklet(r.Pattern, a)
			if err != nil {
				t.Fatal(err)
			}
			text, tables := metric(b)
			if !strings.Contains(text, c.sentence) {
				t.Errorf("no %q in\n%s", c.sentence, text)
			}
			if tables != c.tables {
				t.Errorf("%d tables of lengths, want %d", tables, c.tables)
			}
		})
	}
}

// metric gives the texts of the steps with centimetres only, and counts the tables of
// lengths by size in centimetres.
func metric(b *booklet.Booklet) (string, int) {
	var out strings.Builder
	tables := 0
	for _, ch := range b.Chapters {
		for _, x := range ch.Blocks {
			switch x := x.(type) {
			case *booklet.Table:
				if strings.HasPrefix(x.Caption, "Lengths by size") && strings.Contains(x.Caption, "centimetres") {
					tables++
				}
			case *booklet.Step:
				for _, p := range x.Blocks {
					if p, ok := p.(*booklet.Paragraph); ok {
						for _, i := range p.Text {
							if m, ok := i.(booklet.Measure); ok {
								out.WriteString(strings.ReplaceAll(m.Metric, "\u00a0", " "))
							} else {
								out.WriteString(booklet.Plain([]booklet.Inline{i}))
							}
						}
						out.WriteString("\n")
					}
				}
			}
		}
	}
	return out.String(), tables
}
