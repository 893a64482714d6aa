package size

import (
	"fmt"
	"strings"
	"unicode/utf8"

	"gopkg.in/yaml.v3"

	"seamwarden/dsl/finding"
)

// The wording of the findings about the file, its keys and its parts.

// report keeps a finding, up to a limit.
func (r *reader) report(f finding.Finding) {
	if !r.full() {
		r.found = append(r.found, f)
	}
}

// full says that no further finding is kept, so that looking for more is idle.
func (r *reader) full() bool { return len(r.found) == mostFindings }

// sorted gives the findings in the order of their places.
func (r *reader) sorted() []finding.Finding {
	if r.full() {
		r.found = append(r.found, unreadable(finding.Span{File: r.file}, "in this file",
			fmt.Sprintf("There may be more problems in this table: only %d are listed.", mostFindings), "Mend those that are listed, then check again."))
	}
	finding.Sort(r.found)
	return r.found
}

func unreadable(at finding.Span, label, headline, help string) finding.Finding {
	return finding.Finding{Rule: "table-unreadable", Severity: finding.Error, Headline: headline, Place: place(at, label), Help: help}
}

func (r *reader) cannot(at finding.Span, label, headline, help string) {
	r.report(unreadable(at, label, headline, help))
}

func (r *reader) wholeFile(headline, help string) {
	r.cannot(finding.Span{File: r.file}, "this file", headline, help)
}

func (r *reader) notUTF8() {
	at := 0
	for at < len(r.src) {
		c, n := utf8.DecodeRune(r.src[at:])
		if c == utf8.RuneError && n == 1 {
			break
		}
		at += n
	}
	r.cannot(r.span(at, at+1), "this byte is not UTF-8", "The table of sizes is not written in UTF-8.", "Save it as text in UTF-8.")
}

// parserWords turns what the parser says into words, by a part of its message.
var parserWords = []struct{ says, headline, help string }{
	{"control characters", "There is a character in the table that text cannot have.", "Delete it; an editor that shows hidden characters finds it."},
	{"unknown anchor", "A * in the table refers to something that is not there.", "Write the number itself; a text that begins with * stands in quotation marks."},
	{"exceeded max depth", "The table is nested too deep.", "A table has parts, rows and values, and nothing deeper."},
	{"mapping values are not allowed", "A colon stands where no name can come before it.", "Put a text with a colon in it into quotation marks, and check how far the lines are set in."},
	{"cannot start any token", "Something in this line can begin no value.", "Set lines in with spaces, not with tabs; put text that begins with @, ` or % into quotation marks."},
	{"tab character", "A tab sets this line in.", "Set lines in with spaces."},
	{"expected ',' or", "A bracket is not closed, or a comma is missing.", "Check the brackets from this line upwards."},
	{"could not find expected ':'", "A name without its colon.", "Write name: value, with a space after the colon."},
	{"did not find expected key", "A line is set in by another width than its neighbours.", "Give all names of one part the same number of spaces."},
	{"block sequence entries", "A dash stands where no list can begin.", "Begin the list on a line of its own, or write it in square brackets."},
	{"quoted scalar", "A quotation mark is not closed.", "Close it on the same line."},
}

// malformed reports what the parser stumbled over.
func (r *reader) malformed(err error) {
	headline, help := "The table of sizes cannot be read at this line.", "Check the colons, the brackets, and how far the lines are set in."
	for _, w := range parserWords {
		if strings.Contains(err.Error(), w.says) {
			headline, help = w.headline, w.help
			break
		}
	}
	r.cannot(r.trouble(err), "here, or just before", headline, help)
}

func (r *reader) secondTable(doc *yaml.Node) {
	at := doc
	if len(doc.Content) > 0 {
		at = doc.Content[0]
	}
	r.cannot(r.node(at), "a second table begins here", "There are two tables in one file.", "Delete the line with --- and put all rows into one table.")
}

func (r *reader) reference(n *yaml.Node) {
	f := unreadable(r.node(n), "a reference", "A table of sizes has no & and * references.", "Write the numbers out in every row; put a text that begins with & or * into quotation marks.")
	f.Why = "Each number stands where it counts, so that a change in one row changes no other."
	r.report(f)
}

func (r *reader) tagged(n *yaml.Node) {
	r.cannot(r.node(n), "a type name", "A table of sizes has no ! type names.", "Delete it; every value is read as it is written.")
}

func (r *reader) notAMapping(n *yaml.Node, what, help string) {
	r.cannot(r.node(n), "not what belongs here", what+" is not a list of names with values.", help)
}

func (r *reader) badKey(n *yaml.Node, where string) {
	r.cannot(r.node(n), "not a name", fmt.Sprintf("“%s” cannot be a name here.", clip(n.Value)),
		"Names in "+where+" begin with a letter and have letters, digits and single hyphens: back-length.")
}

func (r *reader) repeatedKey(n, first *yaml.Node) {
	f := unreadable(r.node(n), "the second", fmt.Sprintf("The name %s stands twice.", clip(n.Value)), "Delete one of them, or give it its own name.")
	f.Related = []finding.Place{place(r.node(first), "the first")}
	r.report(f)
}

func (r *reader) unknownKey(n *yaml.Node, where string, allowed []string) {
	help := strings.ToUpper(where[:1]) + where[1:] + " has " + strings.Join(allowed, ", ") + "."
	if near := finding.Nearest(n.Value, allowed); near != "" {
		help = "Did you mean " + near + "?"
	}
	r.cannot(r.node(n), "not known", fmt.Sprintf("“%s” is not a word of %s.", clip(n.Value), where), help)
}

func (r *reader) missingTop(key, help string) {
	r.wholeFile("The table does not say its "+key+".", help)
}

func (r *reader) badUnit(n *yaml.Node) {
	help := "Write in, cm or mm."
	switch near := strings.ToLower(strings.Trim(n.Value, " .")); {
	case near == "\"" || near == "″" || strings.HasPrefix(near, "in"):
		help = "Write in."
	case strings.HasPrefix(near, "cen") || near == "cms":
		help = "Write cm."
	case strings.HasPrefix(near, "mil"):
		help = "Write mm."
	}
	r.cannot(r.node(n), "not a unit of a table", fmt.Sprintf("“%s” is not a unit that tables of sizes use.", clip(n.Value)), help)
}

func (r *reader) notText(n *yaml.Node, what string) {
	r.cannot(r.node(n), "no text", "There is no text after "+what+".", "Write it on the same line, in quotation marks if it has a colon in it.")
}

func (r *reader) notYesNo(n *yaml.Node, what string) {
	r.cannot(r.node(n), "neither true nor false", "It is not clear what "+what+" is.", "Write "+what+": true, or "+what+": false.")
}

func (r *reader) bothCloths(woven, stretch *yaml.Node) {
	f := unreadable(r.node(stretch), "the other", "Woven and stretch contradict each other.", "Say one of them: stretch: true if the cloth gives.")
	f.Related = []finding.Place{place(r.node(woven), "the one")}
	r.report(f)
}

func (r *reader) overElsewhere(n *yaml.Node, part string) {
	r.cannot(r.node(n), "only under finished", "A row of the part "+part+" lies over no body measure.", "Move the row to finished:, or delete over.")
}

func (r *reader) badValues(n *yaml.Node, row *Row) {
	r.report(finding.Finding{Rule: "size-not-a-number", Headline: fmt.Sprintf("The values of %s are no list.", row.Name),
		Place: place(r.node(n), "one value"), Help: "Write one number for each size in square brackets: [25, 26 1/2, 28]."})
}

func (r *reader) badSizes(n *yaml.Node) {
	r.cannot(r.node(n), "not a list", "The sizes are no list.", "List them in square brackets, smallest first: sizes: [8, 10, 12].")
}

func (r *reader) badSize(n *yaml.Node, why string) {
	f := unreadable(r.node(n), "not a size", fmt.Sprintf("“%s” is a doubtful name for a size.", clip(n.Value)),
		"Give it another name, or put it in quotation marks if that is what it is called.")
	f.Why = strings.ToUpper(why[:1]) + why[1:] + "."
	r.report(f)
}

func (r *reader) tooManySizes(n *yaml.Node) {
	r.cannot(r.node(n), "one too many", fmt.Sprintf("The table has more than %d sizes.", mostSizes), "Divide it into several patterns.")
}

func (r *reader) tooManyRows(n *yaml.Node, part string) {
	r.cannot(r.node(n), "one too many", fmt.Sprintf("The part %s has more than %d rows.", part, mostRows), "Leave out what nobody needs.")
}
