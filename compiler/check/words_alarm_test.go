package check_test

import (
	"strings"
	"testing"

	"seamwarden/compiler"
)

// alarm is a cape with a hood that may be left out, and places for texts.
const alarm = `pattern "Reading Cape" {
  allow 1cm
  finish seams together with overlock, press open
}

option hooded "Hood"

fabric wool "Wool" { widths 150cm }

cord tie "Cord" when hooded { length 1m }

piece cape 1 "Cape" {
  edges neck, front, hem, centre
  cut 1 wool on fold centre
  marks loop-place inside when hooded
}

piece cowl 2 "Deep hood" when hooded {
  edges neck, face, crown
  cut 2 wool mirrored
}

seam crown joins cowl.crown to cowl.crown

seam neck joins cowl.left.neck, cowl.right.neck to cape.neck

TOP
step hood "Sew the hood" when hooded {
  mark cape.loop-place
  sew crown
  sew neck
  hem cowl.face turning 1cm, 1cm
  attach tie to cape at loop-place
}

step edges "TITLE" {
  hem cape.front, cape.hem turning 5mm, 1cm
  hem cape.neck turning 5mm, 1cm when not hooded
  """
  TEXT
  """ GUARD
}

`

func alarmed(t *testing.T, text, title, guard, top string) (rules []string) {
	t.Helper()
	src := strings.NewReplacer("TEXT", text, "TITLE", title, "GUARD", guard, "TOP", top).Replace(alarm)
	found, sources := findings(t, map[string]string{compiler.Root: src})
	for _, f := range counting(found) {
		rules = append(rules, f.Rule)
		t.Log(f.Headline)
	}
	_ = sources
	return
}

// TestWordsOfWhatMayBeMissing tries sentences about a hood that only some capes
// have.
func TestWordsOfWhatMayBeMissing(t *testing.T) {
	const absent = "text-speaks-of-what-is-absent"
	for _, c := range []struct{ text, guard, want string }{
		{"Press the hem.", "", ""},
		{"Push the hood back first.", "", absent},
		{"Push the hood back first.", "when hooded", ""},
		{"Push the hood back first.", "when not hooded", absent},
		{"If you made the hood, push it back first.", "", ""},
		{"Where there is one, push the hood back.", "", ""},
		{"Without the hood, begin at the neck.", "", ""},
		{"This is done for the hood or the collar alike.", "", ""},
		{"A cape is no hood.", "", ""},
		{"A hood is heavy.", "", absent},
		{"Cords catch easily.", "", absent},
		{"Hold the cord out of the way.", "", absent},
		{"Buy a foot: the cord foot is the narrow one.", "", ""},
		{"It should hood the eyes.", "", ""},
		{"The crown seam lies open.", "", absent},
		{"The crown lies open.", "", ""}, // of a head as well
		{"The side seam lies open.", "", ""},
		{"Look at the loop place.", "", absent},
		{"Let no likelihood worry you.", "", ""},
	} {
		if got := strings.Join(alarmed(t, c.text, "Hem the edges", c.guard, ""), " "); got != c.want {
			t.Errorf("%q %s: found %q, want %q", c.text, c.guard, got, c.want)
		}
	}
}

// TestWordsOfWorkThatIsNotDone tries sentences about stitches that nothing makes.
func TestWordsOfWorkThatIsNotDone(t *testing.T) {
	const told = "text-tells-of-work-not-done"
	for _, c := range []struct{ text, want string }{
		{"The hemmed edge lies flat.", ""},
		{"The topstitching shows on both sides.", ""}, // the row of a hem shows as well
		{"The understitching does not show.", ""},     // denied
		{"The understitching goes as far as it can.", told},
		{"Topstitch the hem as well. The topstitching shows.", ""}, // done in prose
		{"The neck is not topstitched here.", ""},
		{"Take out the basting.", told},
		{"If you held it with basting, take that out.", ""},
		{"The cape is bound to please.", ""},
		{"The bound edge is left to you.", ""}, // nothing here is bound by an operation
		{"The understitched facing rolls in.", told},
		{"The fused side lies up.", told},
		{"Fuse a scrap to the point. The fused side lies up.", ""},
	} {
		if got := strings.Join(alarmed(t, c.text, "Hem the edges", "", ""), " "); got != c.want {
			t.Errorf("%q: found %q, want %q", c.text, got, c.want)
		}
	}
}

// TestTitles tries titles against a step that hems.
func TestTitles(t *testing.T) {
	const more = "title-promises-more"
	for _, c := range []struct{ title, text, want string }{
		{"Hem the edges", "Go on.", ""},
		{"Topstitch the edges", "Go on.", more},
		{"Topstitch the edges", "Topstitch close to the fold.", ""}, // no operation does so anywhere
		{"Hem and topstitch the edges", "Go on.", more},
		{"Hem the edges and press them", "Go on.", ""}, // a hem is pressed
		{"Finish the edges", "Go on.", ""},
		{"Make the edges neat", "Go on.", ""},
		{"Edges", "Go on.", ""},
		{"Baste the edges", "Go on.", more},
		{"Mark placement", "Go on.", ""},         // no verb with its object
		{"Clip fastening", "Go on.", ""},         // a thing
		{"The fold and tuck line", "Go on.", ""}, // things
		{"Turn the edges", "Go on.", ""},
		{"Mark the edges", "Go on.", more},
	} {
		if got := strings.Join(alarmed(t, c.text, c.title, "", ""), " "); got != c.want {
			t.Errorf("%q with %q: found %q, want %q", c.title, c.text, got, c.want)
		}
	}
}

// TestGlossary tries words against a pattern that hems and sews.
func TestGlossary(t *testing.T) {
	const unused = "word-never-used"
	for _, c := range []struct{ word, text, want string }{
		{"hem", "Go on.", ""},   // an operation
		{"crown", "Go on.", ""}, // a seam
		{"selvage", "Go on.", unused},
		{"selvage", "Where a front lies on the Selvage, turn it once.", ""},
		{"overlock", "Go on.", ""}, // in the head
		{"baste", "Hold it by basting if you like.", ""},
		{"bind", "Nothing is bound.", ""},
	} {
		top := `word "` + c.word + `" "What it means."` + "\n"
		if got := strings.Join(alarmed(t, c.text, "Hem the edges", "", top), " "); got != c.want {
			t.Errorf("%q with %q: found %q, want %q", c.word, c.text, got, c.want)
		}
	}
}

// TestHouseGlossary has a glossary that comes along with every pattern of a house.
func TestHouseGlossary(t *testing.T) {
	top := ""
	for _, w := range []string{"hem", "nap", "selvage", "welt", "gusset"} {
		top += "word \"" + w + "\" \"What it means.\"\n"
	}
	if got := alarmed(t, "Go on.", "Hem the edges", "", top); len(got) > 0 {
		t.Error(got)
	}
}

// TestPins tries sentences about pins.
func TestPins(t *testing.T) {
	const pins = "pins-never-looked-for"
	for _, c := range []struct{ text, want string }{
		{"Pin the hem.", pins},
		{"Pin the hem. Take out each pin before the needle reaches it, and look for pins at the end.", ""},
		{"Draw it through with a safety pin.", ""},
		{"Use clips in place of pins.", ""},
		{"Let it spin.", ""},
	} {
		if got := strings.Join(alarmed(t, c.text, "Hem the edges", "", ""), " "); got != c.want {
			t.Errorf("%q: found %q, want %q", c.text, got, c.want)
		}
	}
}
