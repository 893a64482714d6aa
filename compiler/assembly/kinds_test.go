package assembly_test

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"seamwarden/compiler"
	"seamwarden/compiler/assembly"
	"seamwarden/compiler/model"
)

// exampleOf names the rule whose examples show a kind of trouble.
var exampleOf = map[assembly.Kind]string{
	assembly.SeamCrossedOpen:       "seam-after-its-end-is-closed",
	assembly.SeamNotSewnYet:        "seam-not-sewn-yet",
	assembly.SeamShutIn:            "seam-out-of-reach",
	assembly.FinishedTooLate:       "finished-after-its-end-was-caught",
	assembly.PressedTooLate:        "pressed-after-its-end-was-caught",
	assembly.EdgeClosedBefore:      "edge-closed-before",
	assembly.FusedWhenTurned:       "fused-when-turned",
	assembly.FusedTooLate:          "fused-after-sewing",
	assembly.PressedTwoWays:        "pressed-and-finished-differently",
	assembly.StitchedFarSide:       "stitched-away-from-the-allowances",
	assembly.StitchedUnpressed:     "stitched-before-pressing",
	assembly.TurnedUnpressed:       "stitched-before-the-turned-part-is-pressed",
	assembly.TrimmedTooLate:        "trimmed-after-stitching",
	assembly.GapNotThere:           "opening-not-there",
	assembly.GapNeverClosed:        "opening-never-closed",
	assembly.NoWayOut:              "turned-without-opening",
	assembly.ZipTooLate:            "inserted-after-its-end-is-closed",
	assembly.ShapedTooLate:         "shaped-after-sewing",
	assembly.TurnedTooEarly:        "turned-before-sewing",
	assembly.FixedBeforeTurning:    "turned-after-stitching-down",
	assembly.FastenedTooEarly:      "fastened-before-closing",
	assembly.MarkedTooLate:         "marked-after-use",
	assembly.RoundNotClosed:        "in-the-round-before-closing",
	assembly.FlatButClosed:         "flat-after-closing",
	assembly.RingIntoFlat:          "ring-sewn-to-an-open-edge",
	assembly.RingSewnOpen:          "ring-sewn-before-closing",
	assembly.PartNotMade:           "part-not-made-yet",
	assembly.ZipShut:               "zip-shut-inside",
	assembly.CaughtTooLate:         "caught-after-sewing",
	assembly.EndsNotJoined:         "closed-before-the-ends-are-joined",
	assembly.CasingNotMade:         "casing-not-made-yet",
	assembly.JoinedBeforeThreading: "joined-before-threading",
	assembly.HeldTooLate:           "held-after-sewing",
	assembly.FinishedTwice:         "finished-twice",
	assembly.SecondPassMissing:     "second-row-missing",
	assembly.FinishedBetween:       "finished-between-two-rows",
	assembly.PatchOnTube:           "patch-on-a-tube",
	assembly.LevelledTooLate:       "levelled-after-hemming",
	assembly.ButtonFirst:           "button-before-buttonhole",
	assembly.StaystitchedLate:      "staystitched-late",
	assembly.PressedNowhere:        "pressed-without-direction",
}

// TestEveryKindIsFound plays the examples of the rules: the failing one has trouble
// of its kind, the passing one none at all.
func TestEveryKindIsFound(t *testing.T) {
	for kind := range assembly.Kinds {
		id := exampleOf[kind]
		if id == "" {
			t.Errorf("kind %d has no example", kind)
			continue
		}
		t.Run(id, func(t *testing.T) {
			folder := filepath.Join("..", "check", "examples", id)
			if list := assembly.Play(read(t, filepath.Join(folder, "failing.seam"))); !holdsKind(list, kind) {
				t.Error("nothing is found in the failing example")
			}
			for _, x := range assembly.Play(read(t, filepath.Join(folder, "passing.seam"))) {
				t.Errorf("found in the passing example: %s", said(x))
			}
		})
	}
}

func holdsKind(list []assembly.Trouble, kind assembly.Kind) bool {
	for _, x := range list {
		if x.Kind == kind {
			return true
		}
	}
	return false
}

// TestSamplesHaveNoTrouble plays the samples, which are right.
func TestSamplesHaveNoTrouble(t *testing.T) {
	folders, err := filepath.Glob(filepath.Join("..", "..", "samples", "*", compiler.Root))
	if err != nil || len(folders) == 0 {
		t.Fatal("no samples", err)
	}
	for _, f := range folders {
		r, err := compiler.Compile(os.DirFS(filepath.Dir(f)))
		if err != nil {
			t.Fatal(err)
		}
		for _, x := range assembly.Play(r.Pattern) {
			t.Errorf("%s: %s", filepath.Base(filepath.Dir(f)), said(x))
		}
		for _, c := range assembly.Hands(r.Pattern).Clashes {
			t.Errorf("%s: hands clash at %v", filepath.Base(filepath.Dir(f)), c.Seam)
		}
	}
}

// TestBothWaysAreRight changes right patterns in ways that are right as well. Source:
// own trade knowledge, recalled; no outside source.
func TestBothWaysAreRight(t *testing.T) {
	for _, c := range []struct{ name, file, old, new string }{
		{"a French seam: the second row is stitched", "second-row-missing", "fell side", "stitch side 1cm"},
		{"a lapped seam: one edge is folded under, and one row holds it", "second-row-missing", "  sew side from the right side\n  trim side to 3mm\n  fell side\n",
			"  press under panel.front.side by 1cm\n  sew side from the right side\n"},
		{"a side seam through finished hems", "finished-twice", "  sew side\n  press side open\n  hem panel.top, panel.hem, panel.other-side turning 1cm, 2cm\n",
			"  hem panel.top, panel.hem, panel.other-side turning 1cm, 2cm\n  sew side through all layers\n  press side open\n"},
		{"a cuff in two rings, and the step does not say so", "in-the-round-before-closing", "sew ankle in the round", "sew ankle"},
		{"a pocket while one side is still open", "patch-on-a-tube", "  mark panel.front.pocket-place\n", "  sew side\n  mark panel.front.pocket-place\n"},
		{"elastic whose ends are caught and not joined", "closed-before-the-ends-are-joined", "  join band-elastic\n", ""},
		{"a flap that is only rolled and not pressed", "stitched-before-the-turned-part-is-pressed", "  press flap\n", ""},
	} {
		t.Run(c.name, func(t *testing.T) {
			text, err := os.ReadFile(filepath.Join("..", "check", "examples", c.file, "passing.seam"))
			if err != nil || !strings.Contains(string(text), c.old) {
				t.Fatal("the example has changed: ", err)
			}
			src := strings.Replace(string(text), c.old, c.new, 1)
			if strings.Contains(c.new, "  sew side\n") {
				src = strings.Replace(src, "sew side, other-side", "sew other-side", 1)
			}
			for _, x := range assembly.Play(build(t, src)) {
				t.Errorf("%s\n%s", said(x), src)
			}
		})
	}
}

// TestZipBeforeItsSeam sews the seam below a zip after the zip, as for an invisible
// one; the order of the neck sews it before.
func TestZipBeforeItsSeam(t *testing.T) {
	o := readOrder(t, "neck").move(t, "centre back seam to stop", false, "zipper")
	for _, x := range assembly.Play(o.compile(t).Pattern) {
		t.Error(said(x))
	}
}

func read(t *testing.T, path string) *model.Pattern {
	t.Helper()
	src, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	return build(t, string(src))
}
