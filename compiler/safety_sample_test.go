package compiler_test

import (
	"strings"
	"testing"
	"testing/fstest"

	"seamwarden/compiler"
	"seamwarden/compiler/booklet"
	"seamwarden/dsl/finding"
)

// spoil changes one file of a sample, and demands that there was something to
// change.
func spoil(t *testing.T, folder fstest.MapFS, file, old, is string) {
	t.Helper()
	text := string(folder[file].Data)
	if !strings.Contains(text, old) {
		t.Fatalf("%s has no %q", file, old)
	}
	folder[file] = &fstest.MapFile{Data: []byte(strings.Replace(text, old, is, 1))}
}

// TestSpoiltCape breaks the child's cape in ways that make it dangerous, or that
// take a reminder away. Each must be found by its rule.
func TestSpoiltCape(t *testing.T) {
	cord := func(wear string) [3]string {
		return [3]string{"stock.seam", "thread \"Polyester thread\"", "cord lace \"Cord\" { length 90cm" + wear + " }\n\nthread \"Polyester thread\""}
	}
	threaded := [3]string{"steps/front.seam", "    edgestitch band along crease\n", "    edgestitch band along crease\n    thread lace through band.inner\n"}
	for name, c := range map[string]struct {
		edits       [][3]string
		rule, where string
	}{
		"a cord through the hood": {[][3]string{cord("; wear hood"), threaded}, "cord-at-a-childs-hood-or-neck", ""},
		"a cord, not said where":  {[][3]string{cord(""), threaded}, "cord-place-not-said", ""},
		"a cord as an option": {[][3]string{cord("; wear hood"), threaded, {"pattern.seam", "option patch", "option drawstring \"Drawstring\"\n\noption patch"},
			{"stock.seam", "wear hood }", "wear hood } when drawstring"}}, "cord-at-a-childs-hood-or-neck", "with drawstring"},
		"ties at the neck": {[][3]string{{"pieces.seam", "// The side seam", "strip tie-strip 3cm x 60cm \"Tie strip\" cut 2 main alike into neck-tie { wear neck, ties }\n\n// The side seam"},
			{"pieces.seam", "catching snap-backing.attach", "catching snap-backing.attach, tie-strip.neck-tie at neck-point"}}, "cord-at-a-childs-hood-or-neck", ""},
		"the neck tape's ends hang free": {[][3]string{{"stock.seam", "wear neck, binds", "wear neck, ends free"}}, "cord-at-a-childs-hood-or-neck", ""},
		"a toggle at the waist cord": {[][3]string{cord("; wear waist, ends toggle, outside 5cm"), threaded, {"sizes.yaml", "sizes: [92, 98, 104, 110, 116, 122, 128]", "sizes: [2, 3, 4, 5, 6, 7, 8]"}},
			"cord-at-a-childs-waist-or-hem", ""},
		"ages raised to those of other children": {[][3]string{{"pattern.seam", "ages 2 to 8 years", "ages 10 to 12 years"}}, "heights-and-ages-disagree", ""},
		"ages lowered, heights left":             {[][3]string{{"pattern.seam", "ages 2 to 8 years", "ages 24 to 30 months"}, {"sizes.yaml", "values: [92, 98, 104, 110, 116, 122, 128]", "values: [110, 112, 114, 116, 118, 122, 128]"}}, "heights-and-ages-disagree", ""},
		"nobody is named":                        {[][3]string{{"pattern.seam", "  for children, ages 2 to 8 years\n", ""}}, "wearer-half-said", ""},
		"the kind is not said":                   {[][3]string{{"pattern.seam", "  kind outerwear\n", ""}}, "wearer-half-said", ""},
		"the caution on small parts removed":     {[][3]string{{"cautions.seam", "caution warning about small-parts", "caution warning about fire"}}, "small-parts-without-caution", ""},
		"the pull test removed":                  {[][3]string{{"steps/front.seam", "    test snap as \"Pull at every half of every snap, in this way.\"\n", ""}}, "fastening-never-tested", ""},
		"the claim turned round":                 {[][3]string{{"pattern.seam", "A wide rain cape", "A wide high-visibility rain cape"}}, "claim-of-protection", ""},
		"a taller size, a cord with fixed ends": {[][3]string{cord("; wear hood, ends fixed"), threaded, {"sizes.yaml", "values: [92, 98, 104, 110, 116, 122, 128]", "values: [92, 98, 104, 110, 116, 122, 140]"}},
			"cord-at-a-childs-hood-or-neck", "in sizes 92 to 122"},
	} {
		folder := readSample(t, "puddle-cape")
		for _, e := range c.edits {
			spoil(t, folder, e[0], e[1], e[2])
		}
		r, err := compiler.Compile(folder)
		if err != nil {
			t.Fatal(err)
		}
		found := false
		for _, f := range r.Findings {
			if f.Rule == c.rule && (c.where == "" || f.When == c.where) {
				found = true
			} else if f.Severity != finding.Unchecked {
				t.Logf("%s, besides: %s: %s [%s] %q", name, f.Severity, f.Headline, f.Rule, f.When)
			}
		}
		if !found {
			t.Errorf("%s: %s finds nothing there", name, c.rule)
		}
	}
}

// bookletText gives the cover's facts and the cautions of a sample's booklet.
func bookletText(t *testing.T, folder fstest.MapFS) (facts, cautions string) {
	t.Helper()
	r, err := compiler.Compile(folder)
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
	for _, f := range b.Cover.Facts {
		facts += f.Name + ": " + booklet.Plain(f.Value) + "\n"
	}
	for _, block := range b.Chapters[0].Blocks {
		if c, ok := block.(*booklet.Caution); ok {
			cautions += c.Signal + ": " + booklet.Plain(c.Text) + "\n"
		}
	}
	return
}

// TestChildrensCautions looks into the booklet: it says for whom the garment is, and
// adds the usual cautions of a child's garment where the designer's own are silent.
func TestChildrensCautions(t *testing.T) {
	cords, parts, rules := "can catch and strangle a child, and a long end", "A button, snap or other small part", "Countries have rules of their own for children's things"
	folder := readSample(t, "puddle-cape")
	facts, cautions := bookletText(t, folder)
	if !strings.Contains(facts, "For: children, 2 to 8 years\n") {
		t.Errorf("the cover says:\n%s", facts)
	}
	for _, c := range []string{cords, parts, rules} {
		if strings.Contains(cautions, c) {
			t.Errorf("%q is said although the designer's own say it", c)
		}
	}
	spoil(t, folder, "pattern.seam", "include \"cautions.seam\"\n", "")
	_, cautions = bookletText(t, folder)
	for _, c := range []string{cords, parts, rules} {
		if !strings.Contains(cautions, c) {
			t.Errorf("%q is not said; the cautions are:\n%s", c, cautions)
		}
	}
	spoil(t, folder, "pattern.seam", "for children, ages 2 to 8 years", "for adults, heights 160cm to 188cm")
	facts, cautions = bookletText(t, folder)
	if !strings.Contains(facts, "For: adults, 160\u00a0cm") || strings.Contains(cautions, cords) || strings.Contains(cautions, rules) {
		t.Errorf("for adults the booklet says:\n%s\n%s", facts, cautions)
	}
	spoil(t, folder, "pattern.seam", "for adults, heights 160cm to 188cm\n  kind outerwear", "for children, ages 3 years\n  kind sleepwear\n  packaging \"Keep away from fire.\"")
	facts, cautions = bookletText(t, folder)
	if !strings.Contains(cautions, "Nightwear can catch fire") || strings.Contains(cautions, parts) || !strings.Contains(facts, "On the packaging: Keep away from fire.") {
		t.Errorf("for nightwear the booklet says:\n%s\n%s", facts, cautions)
	}
}
