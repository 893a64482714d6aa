package outline

import (
	"fmt"
	"strings"

	"seamwarden/compiler/figure"
	"seamwarden/dsl/finding"
)

// The rules of this package.
const (
	RuleUnreadable = "outline-unreadable"       // the file, or a shape in it, cannot be read
	RuleRing       = "outline-not-closed"       // the edges make no closed ring
	RuleCrosses    = "outline-crosses-itself"   //
	RuleName       = "outline-name-unclear"     // a size, edge or mark without a name of its own
	RuleAllowance  = "outline-allowance-unsaid" // cut along or sewn along?
	RuleDoubtful   = "outline-doubtful"         // a warning: something is left out, or not as it looks
	RuleScale      = "outline-scale-unsaid"     // how large a unit is
	RuleActive     = "outline-active-content"   // a script, or something from outside
)

// mostFound is how many findings are listed for one file.
const mostFound = 20

// notes collects findings.
type notes struct {
	list  []finding.Finding
	sizes map[int][]string // of a finding by its number, the sizes in which it holds
	bad   bool             // what was found leaves nothing that can be measured
}

func (n *notes) add(f finding.Finding) {
	n.bad = n.bad || f.Severity == finding.Error
	if len(n.list) < mostFound {
		n.list = append(n.list, f)
	}
}

// of notes the sizes of a finding.
func (n *notes) of(i int, sizes []string) {
	if n.sizes == nil {
		n.sizes = map[int][]string{}
	}
	n.sizes[i] = append([]string(nil), sizes...)
}

func (n *notes) all() []finding.Finding {
	finding.Sort(n.list)
	return n.list
}

func worst(list []finding.Finding) finding.Severity {
	s := finding.Unchecked
	for _, f := range list {
		s = min(s, f.Severity)
	}
	return s
}

// ofOutlines gives findings of the walk the names of an outline. What they say of a
// figure holds of it word for word.
func ofOutlines(list []finding.Finding) (out []finding.Finding) {
	words := strings.NewReplacer("A figure", "An outline", "a figure", "an outline", "figure", "outline")
	for _, f := range list {
		say := finding.Finding{Rule: RuleUnreadable, Severity: f.Severity, Place: f.Place, Related: f.Related,
			Headline: words.Replace(f.Headline), Why: words.Replace(f.Why), Help: words.Replace(f.Help)}
		if f.Rule == figure.RuleActiveContent {
			say = finding.Finding{Rule: RuleActive, Severity: f.Severity, Place: f.Place, Headline: say.Headline, Help: say.Help,
				Why: "An outline is measured and drawn in a booklet that runs nothing that came with a drawing."}
		}
		out = append(out, say)
	}
	return
}

func slip(rule string, at finding.Span, label, headline, why, help string) finding.Finding {
	return finding.Finding{Rule: rule, Severity: finding.Error, Headline: headline + ".", Place: finding.Place{Span: at, Label: label}, Why: why, Help: help}
}

// doubtful warns of what may be meant.
func doubtful(at finding.Span, label, headline, why, help string) finding.Finding {
	return finding.Finding{Rule: RuleDoubtful, Severity: finding.Warning, Headline: headline + ".", Place: finding.Place{Span: at, Label: label}, Why: why, Help: help}
}

func with(f finding.Finding, at finding.Span, label string) finding.Finding {
	f.Related = append(f.Related, finding.Place{Span: at, Label: label})
	return f
}

// sizesCalled gives " in size 12", or nothing.
func sizesCalled(sizes []string) string {
	switch len(sizes) {
	case 0:
		return ""
	case 1:
		return " in size " + sizes[0]
	}
	return " in sizes " + strings.Join(sizes, ", ")
}

func quoted(name string) string { return "“" + clipped(name) + "”" }

func clipped(s string) string {
	const most = 40
	if r := []rune(s); len(r) > most {
		return string(r[:most]) + "…"
	}
	return s
}

// Of the file and its groups.

func sizeNotSaid(at finding.Span) finding.Finding {
	return slip(RuleScale, at, "no width or height", "The outline does not say how large it is",
		"A view box counts units; only a width or a height says how long a unit is.", `Give <svg> its real width, such as width="300mm".`)
}

func badViewBox(at finding.Span) finding.Finding {
	return slip(RuleUnreadable, at, "cannot be used", "The view box of the outline is not four numbers with a width and a height", "", `Write it as viewBox="0 0 300 500": left, top, width, height.`)
}

func disproportioned(at finding.Span) finding.Finding {
	return doubtful(at, "not in proportion", "Width and height of the outline do not go with its view box",
		"Then the drawing is scaled to fit inside both, and one of the two is not its real size.", "Give width and height the proportions of the viewBox.")
}

func tooLoose(at finding.Span, v string) finding.Finding {
	return slip(RuleUnreadable, at, "not used", "How far the ends of edges may lie apart is "+quoted(v), "More than 5 mm would join what does not belong together, and nothing joins nothing.", `Write a length up to 5 mm, such as data-join="0.5mm".`)
}

func noArea(at finding.Span) finding.Finding {
	return slip(RuleUnreadable, at, "nothing is left", "A transform in the outline leaves no area", "", "Look for a 0, or a number that is far too large, in it.")
}

func notMeasured(at finding.Span, name string) finding.Finding {
	what := map[string]string{"use": "A copy (<use>)", "svg": "A drawing inside the drawing", "image": "A picture"}[name]
	return doubtful(at, "left out", what+" in an outline is not measured", "", "Draw it as shapes of its own (in drawing programs: unlink, expand or trace it), or take it away.")
}

func tooLarge(at finding.Span) finding.Finding {
	return slip(RuleUnreadable, at, "too far out", "A shape of the outline reaches more than a kilometre", "", "Look for a slip in its numbers or in a transform around it.")
}

func sizeInSize(at finding.Span) finding.Finding {
	return slip(RuleName, at, "inside another size", "A size stands inside another size", "", "Close the first group before this one begins.")
}

func sizeWithoutName(at finding.Span) finding.Finding {
	return slip(RuleName, at, "which size?", "A group is called a size and does not say which", "", `Call it by the name in the table of sizes: id="size-12", or data-size="12, 14" for several.`)
}

func sizeTwice(at finding.Span, name string, first finding.Span) finding.Finding {
	return with(slip(RuleName, at, "the second", "Size "+clipped(name)+" is drawn twice in one outline", "", "Keep one of them."), first, "the first")
}

func outsideSizes(all, own *shape, sizes []string) finding.Finding {
	return with(slip(RuleName, all.at, "belongs to every size", "The "+edge(all.name)+" is drawn outside every size, and"+sizesCalled(sizes)+" as well",
		"What stands outside the groups of the sizes belongs to all of them.", `If it is of one size, name its group so: id="size-12", or data-size="12". If it is alike in all, draw it once.`), own.at, "drawn here too")
}

func allowanceUnknown(at finding.Span, v string) finding.Finding {
	return slip(RuleAllowance, at, "not known", "Whether the allowance is included is "+quoted(v)+", which means nothing here", "", `Write data-allowance="included" for a cutting line, "none" for a stitching line.`)
}

func allowanceInside(at finding.Span) finding.Finding {
	return slip(RuleAllowance, at, "not here", "The allowance is spoken of inside a size", "A piece in one size is drawn wholly with or wholly without it.", "Say it of the group of the size, or of the whole file.")
}

func allowanceNotSaid(at finding.Span) finding.Finding {
	return slip(RuleAllowance, at, "with or without?", "The outline does not say whether it includes the allowance",
		"Whether a line is cut along or sewn along changes every length and the cloth that is needed.", `Add data-allowance="included" for a cutting line, or data-allowance="none" for a stitching line.`)
}

// Of a DXF file.

func notCode(at finding.Span, v string) finding.Finding {
	return slip(RuleUnreadable, at, "not a number", "A line of the DXF file that should be a group code is "+quoted(v), "A DXF file in text form has a number on one line and what it stands for on the next.", "Save it again as DXF in text form (ASCII).")
}

func cutShort(at finding.Span) finding.Finding {
	return slip(RuleUnreadable, at, "nothing follows", "The DXF file ends in the middle of a pair", "", "Save it again.")
}

func notNumber(at finding.Span, v string) finding.Finding {
	return slip(RuleUnreadable, at, "not a number", "A coordinate in the DXF file is "+quoted(v), "", "Save it again as DXF in text form (ASCII).")
}

func binaryDXF(at finding.Span) finding.Finding {
	return slip(RuleUnreadable, at, "not text", "The DXF file is not in text form", "", "Save it as DXF in text form (ASCII).")
}

func noPieces(at finding.Span) finding.Finding {
	return slip(RuleUnreadable, at, "no piece", "There is no piece in the DXF file", "A piece is a block with its cutting line on layer 1.", "Save it for pattern interchange (ASTM D6673).")
}

func unitsNotSaid(at finding.Span) finding.Finding {
	return slip(RuleScale, at, "which unit?", "The DXF file does not say in which unit it is drawn", "An inch for a millimetre is a piece 25 times too large.", "Set $INSUNITS in its header, or save it with a text “Units: METRIC” or “Units: ENGLISH”.")
}

func (b *builder) edgeNamedTwice(at finding.Span, one, other string) finding.Finding {
	return slip(RuleName, at, "the second name", fmt.Sprintf("One edge%s is called both %s and %s", b.size, quoted(one), quoted(other)), "A name belongs to the edge whose middle is nearest; an edge runs from one corner (layer 2) to the next.", "Move the name to the middle of its edge, or mark the corner between the two.")
}

// Of one size.

func (b *builder) noEdges() finding.Finding {
	return slip(RuleRing, b.out.Span, "no edge here", "The outline has no edge"+b.size, "An edge is a path with an id; shapes without one are decoration.", `Give each edge its name, such as id="hem", or one closed path corners, such as <circle id="corner-hem" …/>.`)
}

func (b *builder) noRoom() finding.Finding {
	return slip(RuleRing, b.out.Edges[0].Span, "no area", "The edges of the outline shut in nothing"+b.size, "", "Look whether an edge goes there and back, or whether the unit is far too small.")
}

func (b *builder) edgeWithoutName(at finding.Span) finding.Finding {
	return slip(RuleName, at, "no name", "An edge of the outline has no name"+b.size, "What stands behind the first _ of an id is left out, so that ids may differ from size to size.", "Name it as in the piece's `edges`.")
}

func (b *builder) edgeOfNoLength(sh *shape) finding.Finding {
	return slip(RuleRing, sh.at, "a point", "The "+edge(sh.name)+" of the outline has no length"+b.size, "", "Draw it from corner to corner, or take it away.")
}

func (b *builder) severalParts(sh *shape) finding.Finding {
	return slip(RuleRing, sh.at, fmt.Sprintf("%d separate lines", sh.parts), "The "+edge(sh.name)+" of the outline is not one line"+b.size, "", "Draw each edge in one go; give what is cut out inside an id such as \"opening-slit\".")
}

func (b *builder) edgeTwice(sh *shape, first finding.Span) finding.Finding {
	return with(slip(RuleName, sh.at, "the second", "Two edges of the outline are called "+quoted(sh.name)+b.size, "", "Give each a name of its own, or draw both in one path."), first, "the first")
}

func (b *builder) notClosed(sh *shape, gap float64) finding.Finding {
	if sh.parts != 1 {
		return b.severalParts(sh)
	}
	return slip(RuleRing, sh.at, millimetres(gap)+" open", "The outline is not closed"+b.size+": its ends lie "+millimetres(gap)+" apart", "", "Close the path, or draw the edge that is missing.")
}

func (b *builder) gap(one, next *shape, gap float64, ends []Point) finding.Finding {
	f := with(slip(RuleRing, next.at, "does not reach", fmt.Sprintf("The outline is not closed%s: from the %s to the %s there is a gap of %s", b.size, edge(one.name), edge(next.name), millimetres(gap)),
		"Each edge has to begin where another ends, within "+millimetres(b.tolerance)+".", "Move the ends onto one another, draw the edge that is missing, or give an inside line an id such as \"mark-pocket\"."), one.at, "ends here")
	if sh := b.fitting(one.to(), ends); sh != nil {
		f = with(f, sh.at, "this line would fit")
		f.Help = "The line that fits has no id: give it the name of its edge, such as id=\"hem\"."
		if sh.kind != decoration {
			f.Help = fmt.Sprintf("The line that fits is read as a %s, because of how its id begins. If it is an edge, add data-edge=%q with the edge's name.", inWords(sh.kind), strings.TrimSuffix(sh.kind+"-"+sh.name, "-"))
		}
	}
	return f
}

// fitting finds a line that is no edge and runs from a place to one of others.
func (b *builder) fitting(from Point, to []Point) *shape {
	for _, sh := range b.aside {
		if len(sh.curves) == 0 {
			continue
		}
		for _, p := range to {
			there := max(distance(sh.from(), from), distance(sh.to(), p))
			back := max(distance(sh.from(), p), distance(sh.to(), from))
			if min(there, back) <= b.tolerance {
				return sh
			}
		}
	}
	return nil
}

// inWords is what the kind of a shape means.
func inWords(kind string) string {
	return map[string]string{"grain": "grain line", "fold": "fold line"}[kind] + map[string]string{"corner": "corner", "notch": "notch", "mark": "mark", "opening": "opening"}[kind]
}

func (b *builder) closedAmongOthers(sh, other *shape) finding.Finding {
	return with(slip(RuleRing, sh.at, "closed in itself", "The "+edge(sh.name)+" of the outline closes in itself, and there are other edges"+b.size, "The ring of a piece is either one closed line or several edges from corner to corner.",
		"Give what is cut out inside an id such as \"opening-slit\"; mark the corners of one closed line with circles such as id=\"corner-hem\"."), other.at, "another edge")
}

func (b *builder) crossed(one, other *Edge) finding.Finding {
	what := "the " + edge(one.Name) + " crosses the " + edge(other.Name)
	if one == other {
		what = "the " + edge(one.Name) + " crosses itself"
	}
	return with(slip(RuleCrosses, other.Span, "crosses", "The outline crosses itself"+b.size+": "+what, "Such a piece cannot be cut.", "Move the line; a loop often is one point in the wrong place."), one.Span, "this")
}

func (b *builder) cornersNeedOneLine(at finding.Span, edges []*shape) finding.Finding {
	if len(edges) == 0 {
		return b.noEdges()
	}
	return with(slip(RuleRing, at, "a corner", "Corners are marked"+b.size+", and the outline is not one closed line", "A corner says where an edge begins on one closed line; a line for each edge has its corners where they meet.",
		"Draw one closed path with an id such as \"outline\", or take the corners away."), edges[len(edges)-1].at, "one of several lines")
}

func (b *builder) cornerOff(sh *shape) finding.Finding {
	return slip(RuleRing, sh.at, "too far away", "The corner where the "+edge(sh.name)+" begins does not lie on the outline"+b.size, "Its middle has to lie within 2 mm of the line.", "Move the circle onto the line.")
}

func (b *builder) cornersInOnePlace(sh, first *shape) finding.Finding {
	return with(slip(RuleRing, sh.at, "the same place", fmt.Sprintf("The %s and the %s begin in one place%s", edge(first.name), edge(sh.name), b.size), "", "Move one of the corners, or take it away."), first.at, "here as well")
}

func (b *builder) grainBent(at finding.Span) finding.Finding {
	return slip(RuleRing, at, "not one straight line", "The grain line is not one straight line"+b.size, "", "Draw it as a <line>; give arrowheads no id.")
}

func (b *builder) grainTwice(at, first finding.Span) finding.Finding {
	return with(slip(RuleName, at, "the second", "There are two grain lines"+b.size, "", "Keep one of them."), first, "the first")
}

func (b *builder) foldBent(at finding.Span) finding.Finding {
	return slip(RuleRing, at, "not one straight line", "A fold line is not one straight line"+b.size, "Cloth folds along a straight line.", "Draw it as a <line>.")
}

func (b *builder) openOpening(sh *shape) finding.Finding {
	return slip(RuleRing, sh.at, "not closed", "The opening "+quoted(sh.name)+" is not one closed line"+b.size, "", "Close the path.")
}

func (b *builder) notchInside(at finding.Span, name string) finding.Finding {
	return doubtful(at, "inside the piece", "The notch "+quoted(name)+" lies on no edge"+b.size, "A notch is cut into an edge; this one is more than 2 mm from every line.", "Move it onto the edge, or call a sign inside \"mark-"+name+"\".")
}

func edge(name string) string {
	if name == "" {
		return "edge"
	}
	return clipped(name) + " edge"
}
