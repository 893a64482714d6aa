package assembly_test

import "seamwarden/compiler/assembly"

// Source of the orders, of the pairs that must hold in them and of the mutants: own
// trade knowledge of sewing, recalled; no outside source. Where the reference table
// order_examples.yaml is at hand, TestOrdersAreThoseOfTheTable compares the lists.

// must is a pair of steps of which the first comes before the second. Kind is what
// is found when the later one is moved before the earlier one, or the earlier one
// after the later one.
type must struct {
	before, after string
	kind          assembly.Kind
}

// broken is a mutant: a step that is moved or dropped. D is the number of the
// defect that it makes; kind, or rule where no step comes at the wrong time, is
// what means that defect.
type broken struct {
	drop, move, other string
	before            bool
	d                 string
	kind              assembly.Kind
	rule              string
}

type orderCase struct {
	file    string
	must    []must
	mutants []broken
}

var orderCases = []orderCase{
	{"neck", []must{
		{"face neck", "clip", assembly.SeamNotSewnYet},
		{"staystitch neck", "shoulder seams", assembly.StaystitchedLate},
		{"fuse facings", "facing shoulder seams", assembly.FusedTooLate},
		{"shoulder seams", "face neck", assembly.SeamCrossedOpen},
		{"facing shoulder seams", "face neck", assembly.SeamCrossedOpen},
		{"finish back edges", "zipper", assembly.EdgeClosedBefore},
		{"zipper", "face neck", assembly.ZipTooLate},
		{"face neck", "grade", assembly.SeamNotSewnYet},
		{"grade", "understitch", assembly.TrimmedTooLate},
		{"clip", "understitch", assembly.TrimmedTooLate},
		{"understitch", "tack facing", assembly.SeamShutIn},
	}, []broken{
		{move: "face neck", before: true, other: "shoulder seams", d: "D11", kind: assembly.SeamCrossedOpen}, // facing before the seam that crosses it
		{move: "understitch", before: true, other: "clip", d: "D16", kind: assembly.TrimmedTooLate},          // understitched before clipping
		{drop: "fuse facings", d: "D01", rule: "interfacing-never-fused"},                                    // interfacing cut and never fused
	}},
	{"sleeve", []must{
		{"make cuff", "topstitch cuff", assembly.SeamNotSewnYet},
		{"set cuff", "topstitch cuff", assembly.SeamNotSewnYet},
		{"side and sleeve seam", "set cuff", assembly.SeamCrossedOpen}, // an error, since the slit divides the sleeve end: flat, it has two ends
		{"placket", "set cuff", assembly.SeamCrossedOpen},
		{"sleeve to armhole", "side and sleeve seam", assembly.FlatButClosed},
		{"pleat sleeve end", "set cuff", assembly.ShapedTooLate},
		{"fuse cuffs", "make cuff", assembly.FusedWhenTurned},
		{"make cuff", "set cuff", assembly.PartNotMade},
		{"set cuff", "buttonholes", assembly.FastenedTooEarly},
		{"buttonholes", "buttons", assembly.ButtonFirst},
	}, []broken{
		{move: "side and sleeve seam", before: true, other: "sleeve to armhole", d: "D18", kind: assembly.FlatButClosed}, // set-in and flat mixed
		{move: "placket", other: "set cuff", d: "D49", kind: assembly.SeamCrossedOpen},                                   // placket after the cuff that crosses it
		{move: "fuse cuffs", other: "make cuff", d: "D54", kind: assembly.FusedWhenTurned},                               // fusing where no iron should go
	}},
	{"elastic", []must{
		{"side seams", "casing with opening", assembly.SeamCrossedOpen},
		{"casing with opening", "insert elastic", assembly.GapNotThere},
		{"insert elastic", "join elastic", assembly.JoinedBeforeThreading},
		{"join elastic", "close opening", assembly.EndsNotJoined},
		{"side seams", "hem", assembly.SeamCrossedOpen},
		{"level hem", "hem", assembly.LevelledTooLate},
	}, []broken{
		{move: "close opening", before: true, other: "insert elastic", d: "D32", kind: assembly.GapNotThere}, // opening closed before anything went through
		{move: "hem", before: true, other: "side seams", d: "D28", kind: assembly.SeamCrossedOpen},           // hem before the seams that cross it
	}},
	{"pouch", []must{
		{"fuse shell", "zipper to shell and lining", assembly.FusedTooLate},
		{"zipper to shell and lining", "topstitch zipper", assembly.SeamNotSewnYet},
		{"topstitch zipper", "sew around leaving opening", assembly.PressedTooLate}, // by its pressing, which stands in the same step
		{"open zipper half", "sew around leaving opening", assembly.ZipShut},
		{"sew around leaving opening", "trim corners", assembly.SeamNotSewnYet},
		{"trim corners", "turn", assembly.SeamShutIn},
		{"turn", "close opening", assembly.GapNotThere},
	}, []broken{
		{drop: "open zipper half", d: "D32", kind: assembly.ZipShut},                   // no way out for turning
		{move: "topstitch zipper", other: "turn", d: "D33", kind: assembly.SeamShutIn}, // inner work after the bag is closed
	}},
	{"trousers", []must{
		{"crotch seam", "set waistband", assembly.SeamCrossedOpen},
		{"inseams", "set waistband", assembly.SeamCrossedOpen}, // not by itself: see unfound
		{"pockets", "side seams", assembly.SeamCrossedOpen},
		{"fly", "set waistband", assembly.ZipTooLate},
		{"side seams", "set waistband", assembly.SeamCrossedOpen},
		{"darts back", "set waistband", assembly.ShapedTooLate},
		{"fuse waistband", "set waistband", assembly.FusedWhenTurned},
		{"set waistband", "buttonhole", assembly.FastenedTooEarly},
		{"inseams", "hem", assembly.SeamCrossedOpen},
		{"side seams", "hem", assembly.SeamCrossedOpen},
	}, []broken{
		{move: "set waistband", before: true, other: "fly", d: "D49", kind: assembly.ZipTooLate}, // fly after the band that crosses it
		{move: "pockets", other: "side seams", d: "D30", kind: assembly.PatchOnTube},             // pocket on a tube
	}},
	{"pocket", []must{
		{"sew sides", "trim corners", assembly.SeamNotSewnYet},
		{"sew sides", "turn", assembly.SeamShutIn},
		{"turn", "close opening", assembly.GapNotThere},
		{"place on front", "edgestitch pocket", assembly.HeldTooLate},
		{"place on front", "side seams", assembly.PatchOnTube}, // not by itself: see unfound
		{"join lining and pocket at top with opening", "sew sides", assembly.SeamCrossedOpen},
		{"trim corners", "turn", assembly.SeamShutIn},
		{"turn", "press", assembly.TurnedUnpressed}, // found at the row that comes after both
		{"press", "edgestitch pocket", assembly.TurnedUnpressed},
		{"edgestitch pocket", "side seams", assembly.PatchOnTube},
	}, []broken{
		{move: "edgestitch pocket", before: true, other: "press", d: "D14", kind: assembly.TurnedUnpressed}, // stitched before pressing
		{move: "side seams", before: true, other: "place on front", d: "D30", kind: assembly.PatchOnTube},   // pocket on a tube
	}},
}

// unfound are pairs of which nothing names the two steps themselves, with the
// reason. The test fails if one of them is found.
var unfound = map[string]string{
	"trousers: inseams, set waistband": "the inseams do not reach the waist. Sewn last, in one row from hem to hem, they go on as flat as before; " +
		"the band that is moved before them is found only because the side seams then come after it",
	"pocket: place on front, side seams": "a pocket is held as well on a tube as on a flat panel; " +
		"what is found is the row that sews it on, which comes after both",
	"pocket: turn, press": "pressing a pocket that is inside out does no harm by itself; what is found is the row that is stitched on the turned pocket without pressing it again",
}
