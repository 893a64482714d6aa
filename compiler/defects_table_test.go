package compiler_test

// defects is the catalogue: the 80 defects of the list by kind, then what the list
// by trade adds. Common practice, no source.
var defects = []defect{
	{id: "01", what: "listed and never cut", found: []has{
		{"never-cut", "piece-not-cut", "No cut line cuts the band"},
	}},
	{id: "02", trade: []string{"D03"}, what: "cut and never used", found: []has{
		{"never-used", "piece-never-used", "The band is cut and never sewn to"},
	}},
	{id: "03", trade: []string{"D04", "D46"}, what: "used in a view in which it is not cut", found: []has{
		{"not-cut-in-one-view", "piece-not-cut", "No cut line cuts the patch: in view"},
	}},
	{id: "04", trade: []string{"D07"}, what: "cut number differs from what the steps use", found: []has{
		{"more-cut-than-used", "piece-never-used", "The back loop loop is cut and never"},
	}},
	{id: "05", what: "odd number cut mirrored", found: []has{
		{"odd-number-mirrored", "odd-number-mirrored", "3 of Front cannot be cut mirrored: pairs"},
	}},
	{id: "06", trade: []string{"D05"}, what: "on the fold and mirrored, or two on the fold where one whole is used", found: []has{
		{"fold-and-mirrored", "cut-contradicts-itself", "Back is cut on the fold and mirrored"},
		{"two-wholes-for-one", "seam-of-several-copies", "`back.side` in the side seam means 2 pieces"},
	}},
	{id: "07", what: "single asymmetric cut without a side up", found: []has{
		{"no-side-up", "side-up-not-said", "The wrap is cut once, and the cut"},
	}},
	{id: "08", trade: []string{"D06"}, what: "two of one hand where left and right are needed", found: []has{
		{"two-left-fronts", "mirror-image-by-its-names", "The other side seam joins pieces whose hands"},
	}},
	{id: "09", what: "fusible cut for the wrong face", found: []has{
		{"glue-side-wrong", "glue-side-wrong", "The interfacing of the wrap does not fit"},
	}},
	{id: "10", trade: []string{"D01", "D02"}, what: "interfacing cut and never fused, or fused and never cut", found: []has{
		{"fused-and-never-cut", "interfacing-not-cut", "This step fuses the wrap, and no interfacing"},
		{"never-fused", "interfacing-never-fused", "Interfacing for the wrap is cut and never"},
	}},
	{id: "11", what: "interfacing whose shape or trim does not fit", open: "needs the outlines of the pieces, which are not read yet"},
	{id: "12", what: "lining, contrast or pocketing forgotten in one view", found: []has{
		{"forgotten-in-one-view", "piece-not-cut", "No cut line cuts the patch: in view"},
	}},
	{id: "13", what: "no grain line, or bias not said", open: "needs the outlines of the pieces, which are not read yet"},
	{id: "14", what: "fold edge not straight, or no edge", open: "a fold edge that is no edge is found as a name; whether it is straight needs the outlines of the pieces, which are not read yet"},
	{id: "15", what: "material never cut, or cut and not declared", found: []has{
		{"cut-from-nothing", "name-unknown", "No fabric or interfacing called `canvas` is declared"},
		{"never-cut-from", "material-never-cut", "Nothing is cut from contrast"},
	}},
	{id: "16", what: "piece numbers repeated or skipped", found: []has{
		{"number-repeated", "piece-number-repeated", "The panel and the patch both have the"},
		{"number-skipped", "piece-number-skipped", "The pieces are numbered up to 4, and"},
	}},
	{id: "17", trade: []string{"D37"}, what: "nap or one-way print with pieces turned", open: "needs the layout; no layout is made yet"},
	{id: "18", what: "partner of an optional piece left out", found: []has{
		{"partner-left-out", "piece-never-used", "The upper flap is cut and never sewn"},
	}},
	{id: "19", what: "seam without an allowance", found: []has{
		{"no-allowance", "seam-without-allowance", "The side seam has no allowance"},
	}},
	{id: "20", trade: []string{"D08", "D09"}, what: "two allowances on one seam", open: "the language gives a seam one allowance for both edges, and two have to be said; that a step sews at another is found", found: []has{
		{"sewn-at-another-width", "sewn-beside-the-allowance", "The side seam is sewn at 6mm, and"},
	}},
	{id: "21", trade: []string{"D13"}, what: "edge sewn twice, or never", found: []has{
		{"left-raw", "edge-left-raw", "Nothing is done to the waist edge of"},
		{"never-finished", "seam-never-finished", "The allowances of the side seam are never"},
		{"sewn-twice", "edge-in-two-seams", "The side edge of the front panel is"},
	}},
	{id: "22", trade: []string{"D10"}, what: "seam lengths do not agree", open: "needs the outlines of the pieces, which are not read yet"},
	{id: "23", what: "ease or gathers without a ratio", open: "`with ease` and `gathered` are listed as not checked; the ratio needs the outlines of the pieces, which are not read yet"},
	{id: "24", what: "notches do not face each other", open: "needs the outlines of the pieces, which are not read yet"},
	{id: "25", trade: []string{"D26", "D27"}, what: "hem, fold or trim takes more than the edge has", open: "a hem has no allowance of its own in the language, so its turns cannot be held against one", found: []has{
		{"trimmed-too-far", "trimmed-to-more-than-there-is", "The curve seam is trimmed to 12mm, and"},
	}},
	{id: "26", what: "topstitching beside the allowance", found: []has{
		{"beside-the-allowance", "stitched-beyond-the-allowance", "The side seam is stitched at 1.2cm, and"},
	}},
	{id: "27", what: "French or felled seam wider than its allowance", found: []has{
		{"french-too-wide", "rows-wider-than-the-allowance", "The two rows of the side seam are"},
		{"too-narrow-to-fell", "too-narrow-to-fell", "The side seam is felled: its allowance of"},
	}},
	{id: "28", what: "trim leaves too little", found: []has{
		{"too-little-left", "trimmed-to-almost-nothing", "The curve seam is trimmed so far that"},
	}},
	{id: "29", what: "allowance changed and the text not", found: []has{
		{"measure-stayed", "measure-not-declared", "The text says 1.5 cm, and nothing in"},
	}},
	{id: "30", trade: []string{"D31"}, what: "used before it is made", found: []has{
		{"hemmed-after-it-is-on", "edge-closed-before", "`hem` comes when the top edge of the"},
	}},
	{id: "31", trade: []string{"D12", "D33"}, what: "finished or worked on after it was shut in", found: []has{
		{"finished-too-late", "finished-after-its-end-was-caught", "The side seam is finished after its end"},
		{"inside-a-closed-bag", "seam-out-of-reach", "The allowances of the curve seam cannot be"},
	}},
	{id: "32", what: "fused after sewing", found: []has{
		{"fused-after-sewing", "fused-after-sewing", "The panel is fused after it was sewn"},
	}},
	{id: "33", trade: []string{"D17", "D29"}, what: "gathered or shaped after the seam", found: []has{
		{"dart-after-the-facing", "shaped-after-sewing", "`sew` comes after the waist edge of the"},
		{"gathered-after-sewing", "shaped-after-sewing", "`gather` comes after the side edge of the"},
	}},
	{id: "34", what: "interfacing of a collar after its outer seam", found: []has{
		{"collar-fused-late", "fused-after-sewing", "The tab is fused after it was sewn"},
	}},
	{id: "35", trade: []string{"D30"}, what: "patch pocket onto a tube", found: []has{
		{"onto-a-tube", "patch-on-a-tube", "`apply` comes when the panel can no longer"},
	}},
	{id: "36", trade: []string{"D18"}, what: "sleeve set flat or in the round at the wrong time", found: []has{
		{"in-the-round-too-early", "in-the-round-before-closing", "The set in seam is sewn in the"},
	}},
	{id: "37", trade: []string{"D11"}, what: "collar or facing before the seam that ends under it", found: []has{
		{"collar-before-the-side", "seam-after-its-end-is-closed", "The side seam is sewn only after the"},
	}},
	{id: "38", trade: []string{"D14", "D16"}, what: "topstitched before pressing; understitched too late", found: []has{
		{"topstitched-unpressed", "stitched-before-pressing", "The side seam is pressed only after it"},
		{"understitched-too-late", "seam-out-of-reach", "The allowances of the top seam cannot be"},
	}},
	{id: "39", trade: []string{"D34"}, what: "turned without clipping or grading", found: []has{
		{"turned-untrimmed", "turned-untrimmed", "The top seam is turned inside, and its"},
	}},
	{id: "40", trade: []string{"D32"}, what: "no opening to turn through, or never closed", found: []has{
		{"never-closed", "opening-never-closed", "The opening gap is never closed"},
		{"no-opening", "turned-without-opening", "The pouch is sewn shut all round and"},
	}},
	{id: "41", trade: []string{"D49"}, what: "zip after the facing shut its end", found: []has{
		{"zip-after-the-facing", "inserted-after-its-end-is-closed", "This goes in after the waist edge of"},
	}},
	{id: "42", what: "loops or ties after the band is closed", found: []has{
		{"loops-after-the-band", "caught-after-sewing", "`attach` comes when the side edge of the"},
	}},
	{id: "43", what: "buttonholes after the parts are a tube", open: "only patches are held against a tube, not yet buttonholes"},
	{id: "44", trade: []string{"D28"}, what: "hem before the seams that end in it", found: []has{
		{"hem-before-the-side", "seam-after-its-end-is-closed", "The side seam is sewn only after the"},
	}},
	{id: "45", what: "step skipped in one view leaves something loose", found: []has{
		{"loose-in-one-view", "seam-never-sewn", "The side seam is never sewn: in view"},
	}},
	{id: "46", what: "two ways for one edge both there, or neither", found: []has{
		{"neither-way", "edge-left-raw", "Nothing is done to the waist edge of"},
		{"two-ways-at-once", "edge-closed-two-ways", "The top edge of the band is closed"},
	}},
	{id: "47", what: "left and right confused between text and operation", found: []has{
		{"text-says-left", "text-says-the-other-side", "The text says left front, and this step"},
	}},
	{id: "48", what: "one of a pair treated", found: []has{
		{"one-side-only", "one-side-only", "`staystitch` is done to the neck edge of"},
	}},
	{id: "49", trade: []string{"D15"}, what: "stitched on the other side than pressed", found: []has{
		{"stitched-on-the-wrong-side", "stitched-away-from-the-allowances", "The side seam was pressed to the other"},
	}},
	{id: "50", what: "two right sides, or a wrong side, to see", found: []has{
		{"never-turned", "never-turned", "The facing is sewn with its right side"},
	}},
	{id: "51", trade: []string{"D45"}, what: "refers to what does not exist", found: []has{
		{"no-such-piece", "name-unknown", "Nothing called `yoke` is declared"},
		{"no-such-step", "brace-names-nothing", "There is no step called `pleats`"},
		{"no-such-view", "text-names-another-view", "The text speaks of view C, and there"},
	}},
	{id: "52", what: "number typed by hand", found: []has{
		{"typed-by-hand", "number-typed-by-hand", "“step 3” is a number that was typed"},
	}},
	{id: "53", trade: []string{"D40"}, what: "metric and imperial disagree", found: []has{
		{"inch-and-centimetre", "unit-pair-disagrees", "“5/8 in (2 cm)” gives two different lengths:"},
	}},
	{id: "54", what: "term used and never explained", found: []has{
		{"never-explained", "term-not-explained", "The glossary does not explain “staystitch”"},
	}},
	{id: "55", what: "figure without words, or not referred to", open: "figures stand beside their step and are not referred to by number, so only missing words can be found; a drawing in the folder that nothing names is not looked for", found: []has{
		{"no-words", "figure-without-words", "This figure has no description"},
	}},
	{id: "56", what: "text of one view printed in another", found: []has{
		{"text-of-another-view", "text-names-what-is-absent", "The text speaks of Bias tape where there"},
	}},
	{id: "57", what: "translation older than its original", open: "there is English alone; translations are later work"},
	{id: "58", trade: []string{"D19"}, what: "buttons, buttonholes and list do not agree", found: []has{
		{"fewer-buttonholes", "buttonholes-and-buttons", "Button: 2 buttonholes, and 3 sewn on"},
		{"listed-and-sewn-on", "notion-count", "Button, 20 mm: 4 listed, 3 used"},
	}},
	{id: "59", trade: []string{"D20", "D22"}, what: "zip, elastic or button does not fit", open: "zip against opening needs edge lengths; the length of a buttonhole cannot be said yet, so it is not held against the button", found: []has{
		{"wider-than-its-casing", "too-wide-for-its-casing", "Elastic is 25mm wide, and the hem it"},
	}},
	{id: "60", trade: []string{"D23", "D24", "D25"}, what: "tape, elastic or binding shorter than its edges, or too narrow", open: "needs edge lengths from the outlines; the finished width of a binding cannot be said yet"},
	{id: "61", trade: []string{"D39"}, what: "cloth promised is less than the lay", open: "needs the outlines and a layout; `needs` is listed as not checked"},
	{id: "62", what: "cloth falls with size, or rises with width", found: []has{
		{"falls-with-size", "cloth-falls-with-size", "Size L needs 1.7m of main fabric, and"},
		{"wider-needs-more", "wider-cloth-needs-more", "In size M, 1.7m of main fabric lying"},
	}},
	{id: "63", trade: []string{"D38"}, what: "needs told for one view or width only", found: []has{
		{"one-view-only", "cloth-not-told", "The table does not tell how much of"},
		{"one-width-only", "cloth-not-told", "The table does not tell how much of"},
	}},
	{id: "64", trade: []string{"D21"}, what: "notion of an option counted without it", found: []has{
		{"left-out", "notion-never-used", "Ribbon is listed and never used: without bow"},
	}},
	{id: "65", what: "thread or needle not listed", open: "the foot of the machine is not asked for", found: []has{
		{"no-thread", "supply-not-listed", "Tools are listed, and no thread"},
	}},
	{id: "66", what: "missing cell, repeated size, wrong order", found: []has{
		{"missing-cell", "size-missing-cell", "Back length has no value for size L"},
		{"out-of-order", "size-out-of-order", "Size M stands after size L"},
		{"repeated", "size-repeated", "Size M stands twice"},
	}},
	{id: "67", trade: []string{"D42"}, what: "body measure falls, grade jumps", found: []has{
		{"body-shrinks", "body-measure-shrinks", "Hip girth falls from 96 cm in size"},
		{"one-step-out", "grade-jump", "Hip girth changes by +8 cm from size"},
	}},
	{id: "68", trade: []string{"D44"}, what: "finished measure below the body in a woven", found: []has{
		{"smaller-than-the-body", "negative-ease", "Hip is smaller than the body in sizes"},
	}},
	{id: "69", what: "inches and centimetres of a table disagree", open: "cannot be written: a table has one unit, and both are printed from it"},
	{id: "70", what: "two drafts overlap and nobody says how to choose", found: []has{
		{"drafts-alike", "drafts-not-told-apart", "B cup and D cup have the same body measures"},
	}},
	{id: "71", what: "finished measure that the outlines contradict", open: "needs the outlines of the pieces, which are not read yet"},
	{id: "72", what: "length by view missing", found: []has{
		{"length-of-one-view", "length-not-told", "The finished length is told for some garments"},
	}},
	{id: "73", trade: []string{"D51"}, what: "cord at neck or hood of a child's garment", found: []has{
		{"cord-at-the-neck", "cord-at-a-childs-hood-or-neck", "Cord is worn at the neck of a"},
	}},
	{id: "74", what: "small parts for under-threes", found: []has{
		{"eyes-on-a-toy", "toy-with-small-parts", "A toy that a child under three may"},
	}},
	{id: "75", what: "children's nightwear neither tight nor warned", found: []has{
		{"loose-nightwear", "sleepwear-loose-without-caution", "Nothing says that this nightwear fits tightly, and"},
	}},
	{id: "76", what: "long ties, weights, fill", open: "weights are not told from other filling", found: []has{
		{"long-ties", "long-end-on-a-childs-garment", "The ends of ribbon hang far out at"},
		{"loose-fill", "fill-without-caution", "No caution speaks of the loose filling"},
	}},
	{id: "77", what: "iron, blade and needle without the general cautions", open: "cannot be written: the booklet adds the usual cautions itself where a pattern has none"},
	{id: "78", what: "facts changed, edition not", open: "needs the edition before; comparing two editions is later work"},
	{id: "79", what: "change list says what did not change, or misses what did", open: "what has changed needs the edition before; that the edition is told of is asked", found: []has{
		{"edition-not-told", "edition-not-in-the-changes", "The head names edition 1.2, and the list"},
		{"later-edition-told", "change-after-this-edition", "The changes tell of edition 1.3, and the"},
	}},
	{id: "80", what: "corrected in one place only", open: "cutting table and steps are made from one declaration; numbers typed in the text are the defect 29; translations are later work"},
	{id: "D35", trade: []string{"D35"}, what: "basting never taken out", found: []has{
		{"basting-left-in", "basting-left-in", "This basting is neither covered by a seam"},
	}},
	{id: "D36", trade: []string{"D36"}, what: "press direction not said", found: []has{
		{"never-pressed", "seam-never-pressed", "No step presses the side seam"},
	}},
	{id: "D41", trade: []string{"D41"}, what: "fraction that can be read in two ways", found: []has{
		{"eleven-halves", "fraction-without-space", "“11/2 in” can be read in two ways"},
	}},
	{id: "D43", trade: []string{"D43"}, what: "size that is not offered", found: []has{
		{"size-not-offered", "text-names-another-size", "The text speaks of size XL, and the"},
	}},
	{id: "D47", trade: []string{"D47"}, what: "one name for two pieces", found: []has{
		{"one-name-twice", "piece-name-repeated", "Two pieces are called panel"},
	}},
	{id: "D48", trade: []string{"D48"}, what: "lining or interfacing in another number than the shell", found: []has{
		{"one-stay-for-two", "interfacing-for-one-of-two", "This step fuses the front, of which 2"},
		{"two-linings-for-one", "seam-of-several-copies", "`pouch.lining.curve` in the curve seam means several pieces"},
	}},
	{id: "D50", trade: []string{"D50"}, what: "cannot be put on", open: "needs the girths of openings and of the body they pass over"},
	{id: "D52", trade: []string{"D52"}, what: "caution after its step", found: []has{
		{"caution-too-late", "caution-after-the-work", "This caution stands after the work that it"},
	}},
	{id: "D53", trade: []string{"D53"}, what: "step of more than one action or 20 words", open: "style: no rule, since nothing can switch a rule on that is off by default"},
	{id: "D54", trade: []string{"D54"}, what: "fused over folds", open: "cloth that takes no heat, and the teeth of a zip, cannot be said yet", found: []has{
		{"fused-over-pleats", "fused-over-folds", "The panel is fused after it was folded"},
	}},
}
