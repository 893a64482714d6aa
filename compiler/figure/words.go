package figure

import (
	"fmt"
	"strings"

	"seamwarden/dsl/finding"
)

// feature words one thing that is not drawn: what it is, what becomes of it in
// its place, and what to do instead.
type feature struct{ headline, label, help string }

// features are keyed by what they are, not by how they are written, so that a
// gradient and its use are one thing.
var features = map[string]feature{
	"picture":   {"A picture inside a figure is not drawn", "left out", "Trace it into lines in the drawing program."},
	"copy":      {"A <use> copy in a figure is not drawn", "left out", "Turn the copy into shapes of its own (in drawing programs: unlink or expand the clone or symbol)."},
	"viewport":  {"A drawing inside the drawing is not drawn", "left out", "Put its shapes into a group (<g>) instead."},
	"switch":    {"A <switch> in a figure is not drawn", "left out", "Save as plain SVG, without the drawing program's own data."},
	"link":      {"A link in a figure does nothing", "its drawing was kept", "Take the link away; links belong in the prose."},
	"arrowhead": {"Arrowheads and other line markers are not drawn", "drawn without", "Draw the arrowhead as a shape of its own (in drawing programs: stroke to path)."},
	"gradient":  {"A gradient or pattern in place of a colour is not drawn", "left without it", "Give it one colour, or draw the hatching as lines."},
	"clip":      {"Clipping is not done", "drawn whole", "Cut the shape itself to its outline."},
	"mask":      {"Masking is not done", "drawn whole", "Cut the shape itself to its outline."},
	"filter":    {"Filters such as blur and shadow are not drawn", "drawn without", "Take the filter away; print needs plain lines."},
	"sheen":     {"See-through colours are not drawn", "drawn solid", "Choose a lighter solid colour."},
	"movement":  {"Movement in a figure is never shown", "drawn standing still", "Draw one figure for each moment."},
	"rules":     {"Style rules in a <style> element are not read", "not read", "Save with style in attributes (in drawing programs: presentation attributes), so that each shape carries its own."},
	"text-path": {"Words along a curve are not drawn", "left out", "Set the words on a straight line, or turn them into shapes."},
	"run":       {"A change of type or place inside a line of words is not drawn", "set like the words before it", "Give these words an x and a y of their own."},
	"letters":   {"Letters placed or turned one by one are set as an ordinary line", "set from the first place", "Give only one x and one y."},
	"spacing":   {"Spacing, decoration and direction of letters are not drawn", "set plainly", "Take the setting away."},
	"baseline":  {"Words are always set on their baseline", "set on the baseline", "Move the words with y instead."},
	"slant":     {"Words that are slanted, stretched or mirrored are set straight", "set straight", "Turn the words into shapes, or take the slant away."},
	"outlined":  {"An outline around letters is not drawn", "set without the outline", "Give the words a fill, and no stroke."},
	"mitre":     {"Only the usual limit for sharp corners (4) is drawn", "drawn with 4", "Take stroke-miterlimit away."},
	"fixed":     {"A stroke that keeps its width when scaled is scaled all the same", "scaled", "Take vector-effect away and set the width that is wanted."},
	"blend":     {"Mixing colours and the order of fill and stroke are not drawn", "drawn plainly", "Draw the shapes in the order in which they should lie."},
	"moved-run": {"A transform or geometry set through style, or on this element, is not used", "not used", "Put it in a transform attribute of a shape or group."},
	"fit":       {"The figure is neither stretched nor cut to its width and height", "kept in proportion", "Give width and height the proportions of the viewBox."},
}

// elementFeature says which elements stand for which unsupported thing.
var elementFeature = map[string]string{
	"image": "picture", "use": "copy", "symbol": "copy", "svg": "viewport", "switch": "switch",
	"marker": "arrowhead", "linearGradient": "gradient", "radialGradient": "gradient", "pattern": "gradient",
	"meshgradient": "gradient", "hatch": "gradient", "stop": "gradient", "clipPath": "clip", "mask": "mask", "filter": "filter",
	"animate": "movement", "animateTransform": "movement", "animateMotion": "movement", "animateColor": "movement",
	"set": "movement", "discard": "movement", "textPath": "text-path",
}

// activeElements are never used: they run, load or embed something.
var activeElements = map[string]bool{
	"script": true, "foreignObject": true, "handler": true, "listener": true, "iframe": true, "object": true,
	"embed": true, "audio": true, "video": true, "canvas": true,
}

func (r *reader) feature(key string, at finding.Span) {
	r.notes.unsupported(key, at, features[key])
}

// unknownElement notes an element of SVG's own that is not drawn and has no
// words of its own.
func (r *reader) unknownElement(t *tag) {
	name := "<" + clip(t.name) + ">"
	r.notes.unsupported("element "+clip(t.name), t.span(),
		feature{name + " in a figure is not drawn", "left out", "Draw it with paths, shapes and words."})
}

func (r *reader) unknownProperty(a attr) {
	r.notes.unsupported("property "+clip(a.name), a.span(),
		feature{"The setting “" + clip(a.name) + "” is not drawn", "drawn without", "Take it away, or draw what it does as lines."})
}

func (r *reader) unknownColour(a attr) {
	r.notes.unsupported("colour "+clip(a.value), a.span(), feature{
		"“" + clip(a.value) + "” is not a colour that figures know", "drawn black",
		"Write the colour as #rrggbb."})
}

func (r *reader) unreadable(at finding.Span, headline, label, why, help string) {
	r.notes.add(finding.Finding{Rule: ruleUnreadable, Severity: finding.Error, Headline: headline + ".",
		Place: finding.Place{Span: at, Label: label}, Why: why, Help: help})
}

// badValue notes a value that cannot be read; what becomes of it is the label.
func (r *reader) badValue(a attr, f *fault, left string) {
	r.unreadable(a.spanAt(f.at, f.at+1), fmt.Sprintf("The %s of a figure's shape cannot be read: %s", attrWord(a.name), f.say),
		left, "", "Save the file again from the drawing program, or mend this value.")
}

// attrWord names an attribute as a reader of the file sees it.
func attrWord(name string) string {
	switch name {
	case "d":
		return "path data (d)"
	case "points":
		return "list of points"
	}
	return "“" + clip(name) + "”"
}

func (r *reader) active(at finding.Span, what, left string) {
	r.notes.add(finding.Finding{Rule: RuleActiveContent, Severity: finding.Error,
		Headline: what + " in a figure is never used; " + left + ".",
		Place:    finding.Place{Span: at, Label: "take this out"},
		Why:      "A figure goes into a page that works offline and runs nothing that came with a drawing.",
		Help:     "Save the drawing as plain SVG, or delete this part of the file."})
}

// malformed words what the XML decoder stumbled over.
func malformed(msg string, open string) (headline, label string) {
	has := func(s string) bool { return strings.Contains(msg, s) }
	switch {
	case has("unexpected EOF") && open != "":
		return "The figure file ends before <" + open + "> is closed", "the file ends here"
	case has("unexpected EOF"):
		return "The figure file ends in the middle of a tag", "the file ends here"
	case has("closed by") && open != "":
		return "<" + open + "> is not closed before another element ends", "this closes something else"
	case has("unexpected end element"):
		return "An element is closed that was never opened", "nothing to close here"
	case has("entity"):
		return "Only the five entities of XML itself can stand in a figure (&lt; &gt; &amp; &quot; &apos;), besides numbered characters", "this one is unknown"
	case has("attribute"), has("unquoted"), has("quoted string"):
		return "An attribute in the figure file is not written as name=\"value\"", "here"
	case has("character code"), has("UTF-8"):
		return "There is a character in the figure file that XML does not allow", "here"
	}
	return "The figure file is not well-formed XML", "cannot be read from here on"
}
