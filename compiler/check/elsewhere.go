package check

import "seamwarden/dsl/finding"

// What is found before the rules run: by the reader of the language, while the
// model is put together, and by the readers of tables and figures. It is
// registered here so that it is explained like everything else.
func init() {
	found := func(category string, severity finding.Severity, id, purpose, why string) {
		register(Rule{ID: id, Severity: severity, Category: category, Purpose: purpose, Why: why})
	}
	reading(func(id, purpose, why string) { found("reading", finding.Error, id, purpose, why) })
	naming(func(category, id, purpose, why string) { found(category, finding.Error, id, purpose, why) })
	sizing(func(severity finding.Severity, id, purpose, why string) { found("sizes", severity, id, purpose, why) })
	drawing(func(severity finding.Severity, id, purpose, why string) { found("figures", severity, id, purpose, why) })
	tracing(func(severity finding.Severity, id, purpose, why string) {
		found("outlines", severity, id, purpose, why)
	})
	laying(func(severity finding.Severity, id, purpose, why string) { found("lays", severity, id, purpose, why) })
	filing(func(severity finding.Severity, id, purpose, why string) { found("files", severity, id, purpose, why) })
	remarks(func(severity finding.Severity, id, purpose, why string) { found("remarks", severity, id, purpose, why) })
}

// reading is what the reader of the language finds.
func reading(found func(id, purpose, why string)) {
	found("sentence-unknown", "A sentence begins with a word that says nothing in this place.",
		"Each sentence begins with the word for what it is; without it nobody knows what is meant.")
	found("sentence-not-understood", "A sentence cannot be read to its end.",
		"A word or a sign is missing, too much, or in the wrong place. The help shows how the sentence is written.")
	found("sign-not-understood", "A sign, a number or a quotation mark is not written as it is here.",
		"Signs come along when text is copied from another program, and units are written in many ways.")
	found("brace-unmatched", "A block in braces is opened and not closed, or closed and not opened.",
		"Where a block ends decides what belongs to it: a lost brace moves steps into other steps.")
	found("name-reserved", "A name is a word that the language needs for itself.",
		"A sentence with that name in it could be read in two ways.")
	found("mistakes-not-listed", "There are more mistakes in a file than are listed.",
		"Two hundred are enough for one reading; many of the others may follow from them.")
	found("guard-not-understood", "A guard says nothing: a choice without its way, or a way of what is no choice.",
		"For which garments the sentence holds is then anybody's guess.")
	found("measure-not-understood", "A measure is no length.",
		"A number divided by nothing, or without a unit, cannot be cut.")
	found("count-not-understood", "A number of things is not a whole number from 1 to 9999.",
		"What is cut or sewn on none at all is not written down.")
}

// laying is what is found of lays.
func laying(found func(severity finding.Severity, id, purpose, why string)) {
	found(finding.Advice, "lay-missing", "The pieces are drawn, and how they lie on the cloth is not remembered.",
		"How much cloth a garment needs is known only once its pieces have been laid; `seamwarden lay` finds it.")
	found(finding.Warning, "lay-stale", "A remembered lay is that of other pieces, of another width, or of cloth that is laid otherwise.",
		"It may need more cloth or less. No amount is printed from it, so the booklet would leave the reader without one.")
	found(finding.Error, "lay-edited", "A remembered lay does not hold: pieces overlap or lie off the cloth or its grain, or it is not as long as it says.",
		"The file was changed by hand or damaged, and cut like this the garment could not be made.")
	found(finding.Advice, "lay-unused", "A lay is remembered that nothing needs.", "The view, size or width that it belongs to is gone.")
	found(finding.Warning, "lays-unreadable", "A line of the file of remembered lays cannot be read.", "A lay that cannot be read is not used, and the cloth it needs is not known.")
	found(finding.Error, "wider-than-its-cloth", "A piece is wider, as it has to lie, than a cloth from which it is cut.",
		"Whoever buys that width finds out with the scissors in her hand.")
}

// naming is what is found while names are resolved and cut parts are made.
func naming(found func(category, id, purpose, why string)) {
	found("names", "name-unknown", "A name is used that is declared nowhere.",
		"A slip of the hand in a name is the most common slip of all; each name is therefore declared once, and every use is held against that.")
	found("names", "name-declared-twice", "Two things have the same name.", "A reference could mean either.")
	found("names", "choice-too-small", "A choice offers fewer than two ways.", "There is nothing to choose.")
	found("names", "side-not-understood", "`on … only` names no side of the body.", "There are two sides, the wearer's left and right.")
	found("prose", "brace-names-nothing", "Braces in a text fetch nothing.", "What stands between braces is replaced by a declared value; without one there would be a hole in the sentence.")
	found("prose", "term-without-explanation", "A word of the glossary is not explained, or a change is not told.", "The reader finds the word and nothing behind it.")
	register(Rule{ID: "word-never-used", Severity: finding.Advice, Category: "prose",
		Purpose: "A word of the glossary is used nowhere in the pattern.",
		Why:     "Either the step that used it is missing, or the word is left over; the booklet prints only words that it uses."})
	found("prose", "markup-in-text", "A text holds tags of a web page.",
		"A booklet is printed as well as shown in a browser, so its text is Markdown.")
	found("cutting", "odd-number-mirrored", "An odd number is cut mirrored.", "A mirrored cut gives pairs; the last one has no partner.")
	found("cutting", "cut-contradicts-itself", "A cut line says two things that shut each other out.", "A piece cannot be a whole on the fold and a left and a right one at once.")
	found("cutting", "cut-names-and-number", "The number that is cut is not the number that the names ask for.", "A step that names a copy must find it among what was cut.")
	found("interfacing", "glue-side-on-cloth", "A cut of cloth says which way its glue side lies.", "Only interfacing has a glue side; the cut line of the cloth and that of the interfacing were probably exchanged.")
	found("seams", "seam-joins-no-edge", "A seam joins a piece, a mark or something else that is no edge.", "Sewing runs along edges.")
	found("seams", "seam-of-several-copies", "A seam names an edge that several cut parts have, and not of which.", "Each of them would be sewn somewhere else.")
	found("seams", "pair-in-a-row", "A pair stands in a row of edges, or is joined to a single part, and it is not said where each of the two goes.", "Left and right would be guessed.")
	found("seams", "side-of-a-single", "The left or right one is named of a piece that is not cut as a pair.", "There is no such part on the table.")
	found("steps", "operation-on-the-wrong-thing", "An operation acts on something that it cannot act on.", "Seams are sewn, edges are hemmed, pieces are fused; a seam cannot be fused.")
	found("steps", "operation-without-object", "An operation does not say what it acts on.", "The sewist asks: press what?")
}

// sizing is what the reader of size tables finds.
func sizing(found func(severity finding.Severity, id, purpose, why string)) {
	found(finding.Error, "table-unreadable", "A table of sizes cannot be read, or has a word that it does not know.", "Measures would be missing without a word.")
	found(finding.Error, "size-missing-cell", "A row has no value for a size.", "Whoever makes that size finds a hole in the table.")
	found(finding.Error, "size-extra-cell", "A row has a value that belongs to no size.", "Values follow the order of the sizes, so one too many moves all that come after it.")
	found(finding.Error, "size-not-a-number", "A value of a table is no measure.", "It cannot be printed in the other system or compared with its neighbours.")
	found(finding.Error, "size-repeated", "A size stands twice in the table.", "Nobody can tell which of the two columns holds.")
	found(finding.Error, "size-out-of-order", "A size stands after a larger one.", "Sizes run from the smallest to the largest; lists of values follow their order.")
	found(finding.Error, "body-measure-shrinks", "A body measure falls as the sizes grow.", "A body of a larger size is nowhere smaller; a sewist between the two could not choose.")
	found(finding.Error, "negative-ease", "A finished garment of woven cloth is smaller than the body.", "Woven cloth does not give: the garment would not close.")
	found(finding.Error, "ease-over-unknown", "A finished measure lies over a body measure that is not in the table.", "Its ease cannot be worked out.")
	found(finding.Error, "size-choice-unknown", "The size is chosen by a body measure that is not in the table.", "Whoever chooses a size looks for this measure in the table.")
	found(finding.Error, "size-limit-out-of-place", "A limit between two sizes does not lie between their measures.", "A size reaches from its limit to the next, and its own measure lies between them.")
	found(finding.Warning, "drafts-not-told-apart", "Two drafts have the same body measures.", "Nobody can tell from her measures which of the two to make.")
	found(finding.Warning, "body-off-standard", "A body measure is not that of the standard which the table says it follows.", "Whoever knows her size in a standard takes that size.")
	found(finding.Advice, "body-off-recalled-standard", "A body measure is not that of the standard which the table says it follows, as far as it is remembered.", "The number is recalled from memory and no authority; but a slip of the hand looks like that too.")
	found(finding.Warning, "grade-jump", "A value breaks the run of its row.", "Grading grows in even steps, or in steps that change once and then hold.")
}

// drawing is what the reader of figures finds.
func drawing(found func(severity finding.Severity, id, purpose, why string)) {
	found(finding.Error, "figure-unreadable", "A figure's file cannot be read as a drawing.", "The page would have an empty place where the sewist looks for help.")
	found(finding.Warning, "figure-unsupported", "A figure uses something that is not drawn.", "The booklet and the web page set a figure from lines, fills and words alone.")
	found(finding.Error, "figure-active-content", "A figure holds a program, or loads something from elsewhere.", "A figure goes into a page that works offline and runs nothing that came with a drawing.")
}

// tracing is what the reader of outlines finds.
func tracing(found func(severity finding.Severity, id, purpose, why string)) {
	found(finding.Error, "outline-unreadable", "The drawing of a piece, or a shape in it, cannot be read.", "Nothing of the piece can be measured.")
	found(finding.Error, "outline-active-content", "The drawing of a piece holds a program, or loads something from elsewhere.", "It is measured and drawn in a booklet that runs nothing that came with a drawing.")
	found(finding.Error, "outline-scale-unsaid", "The drawing of a piece does not say how large it is.", "A piece in the wrong size is worse than none.")
	found(finding.Error, "outline-allowance-unsaid", "The drawing of a piece does not say whether it includes the allowance.", "Whether a line is cut along or sewn along changes every length and the cloth that is needed.")
	found(finding.Error, "outline-not-closed", "The edges of a drawn piece make no closed ring, or something in it is not drawn as it should be.", "What is not closed cannot be cut out, and has no area.")
	found(finding.Error, "outline-crosses-itself", "The outline of a piece crosses itself.", "Such a piece cannot be cut.")
	found(finding.Error, "outline-name-unclear", "A size, an edge or a piece of a drawing has no name, or one that another has.", "Nobody can tell which of them is meant.")
	found(finding.Warning, "outline-doubtful", "Something in the drawing of a piece is left out, or is not as it looks.", "A copy or a picture is not measured, and a notch inside a piece is cut by nobody.")
}

// filing is what is found while files are gathered.
func filing(found func(severity finding.Severity, id, purpose, why string)) {
	found(finding.Error, "file-unreadable", "A file that the pattern names cannot be opened or read.", "What stands in it is missing from the pattern.")
	found(finding.Error, "file-outside-the-folder", "A file is named that lies outside the pattern's folder.", "A pattern is handed on as a folder; what lies elsewhere is not there for anybody else, and nothing outside is ever read.")
	found(finding.Error, "include-in-a-circle", "A file includes itself, directly or by way of others.", "It would never end.")
	found(finding.Error, "include-twice", "A file is included twice.", "Everything in it would be declared twice.")
	found(finding.Advice, "figure-never-shown", "A drawing lies among the figures of the pattern, and nothing shows it.", "Drawings are made for a step: the step may have been lost, or the sentence that shows it.")
	found(finding.Advice, "source-never-included", "A source file lies beside those that the pattern includes, and nothing includes it.", "What stands in it is not in the booklet, and is not checked.")
}

// remarks is what is said about findings themselves.
func remarks(found func(severity finding.Severity, id, purpose, why string)) {
	found(finding.Unchecked, "not-checked", "Something was read and could not be decided.", "“Clean” means what it says only if what was not looked at is listed.")
	found(finding.Warning, "acceptance-unused", "A remark accepts a finding that is not found there.", "Left in place, it would hide the mistake when somebody makes it.")
	found(finding.Warning, "acceptance-without-reason", "A remark accepts a finding and does not say why.", "Whoever works on the pattern next cannot tell whether it is still right.")
	found(finding.Warning, "acceptance-of-unknown-rule", "A remark accepts a finding that does not exist.", "It looks as if it accepted something, and does not.")
}
