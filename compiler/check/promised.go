package check

import (
	"fmt"
	"strings"

	"seamwarden/compiler/condition"
	"seamwarden/compiler/model"
	"seamwarden/dsl/finding"
)

func init() {
	register(Rule{ID: "title-promises-more", Severity: finding.Warning, Category: "prose", whole: true, ahead: -4, run: promised,
		Purpose: "The title of a step names work that no operation in it does.",
		Why:     "The sewist looks for the work that the title tells of; and what is only promised is held against nothing."})
}

// doneBy gives, for a verb that a title begins with, the operations that do as it
// says. Verbs that say little, such as sew, make, join or finish, promise nothing.
var doneBy = map[string][]string{
	"baste": {"baste", "tack"}, "bind": {"bind", "cover", "sew", "apply", "stitch", "edgestitch"}, "clip": {"clip", "notch out", "grade", "trim", "slash"},
	"crease": {"press", "press under", "fold"}, "edgestitch": {"edgestitch", "topstitch", "stitch"}, "fold": {"fold", "press", "press under", "turn", "turn under", "pleat", "tuck", "hem", "sew"},
	"fuse": {"fuse"}, "gather": {"gather", "ease", "shirr", "pleat", "thread"}, "grade": {"grade", "trim"}, "hem": {"hem", "press under", "turn under", "fell", "bind", "finish"},
	"level": {"level", "trim"}, "mark": {"mark", "cut", "clip"}, "miter": {"miter", "sew"}, "notch": {"notch out", "clip", "mark"}, "overlap": {"overlap", "lay", "baste"},
	"pleat": {"pleat", "fold", "sew", "press"}, "press": {"press", "press under", "steam", "fuse", "hem"}, "quilt": {"quilt", "stitch", "topstitch"},
	"reinforce": {"reinforce", "staystitch", "bar-tack", "stitch", "topstitch", "edgestitch"}, "set": {"set", "sew", "sew on", "insert", "attach", "apply"}, "shirr": {"shirr", "gather"},
	"slash": {"slash", "cut", "clip"}, "slipstitch": {"slipstitch", "close", "tack"}, "staystitch": {"staystitch", "reinforce"}, "steam": {"steam", "press"},
	"tack": {"tack", "bar-tack", "slipstitch", "stitch", "sew on"}, "topstitch": {"topstitch", "edgestitch", "stitch", "ditch"}, "trim": {"trim", "grade", "clip", "notch out", "cut"},
	"tuck": {"tuck", "sew", "fold"}, "turn": {"turn", "turn under", "press under", "fold", "roll", "hem"}, "understitch": {"understitch"},
}

// promises finds the verbs of a title, which is in small letters: the first word,
// and what follows "and" or a comma, each with the thing that it acts on or another
// verb behind it.
func promises(title string) (verbs []string) {
	for at := range len(title) {
		if at > 0 && !strings.HasSuffix(title[:at], " and ") && !strings.HasSuffix(title[:at], ", ") {
			continue
		}
		end := at
		for end < len(title) && letter(title[end]) {
			end++
		}
		if verb := title[at:end]; doneBy[verb] != nil && goesOn(title[end:]) {
			verbs = append(verbs, verb)
		}
	}
	return verbs
}

// goesOn reports whether what stands behind a verb makes it one.
func goesOn(after string) bool {
	if rest, ok := strings.CutPrefix(strings.TrimPrefix(after, ","), " and "); ok && rest != "" && letter(rest[0]) {
		return true
	}
	return len(after) > 1 && after[0] == ' ' && actedOn.begin(after[1:]) > 0
}

var actedOn = phrases{"the", "a", "an", "each", "every", "all", "both", "it", "them", "its", "their", "your"}

// promised compares the titles of steps with what is done in them. A step that
// only speaks may do the work in its text, and a pattern that declares this kind
// of work nowhere leaves it to its texts throughout.
func promised(r *run) {
	for _, s := range r.Steps() {
		for _, verb := range promises(strings.ToLower(s.Title.Text)) {
			r.promise(s, verb)
		}
	}
}

func (r *run) promise(s *model.Step, verb string) {
	work, done := condition.False, condition.False
	for _, i := range s.Items {
		op, ok := i.(*model.Op)
		if !ok {
			continue
		}
		work = r.Space.Or(work, op.Cond)
		if oneOf(op.Verb, doneBy[verb]) || op.Instead != nil && tellsTo(op.Instead.Text, verb) {
			done = r.Space.Or(done, op.Cond)
		}
	}
	if !hasOps(s) {
		work = s.Cond
	}
	if !r.declares(verb) || !hasOps(s) {
		for _, i := range s.Items {
			if p, ok := i.(*model.Prose); ok && tellsTo(p.Text, verb) {
				done = r.Space.Or(done, p.Cond)
			}
		}
	}
	bad := r.Space.And(r.Space.Diff(r.Space.And(s.Cond, work), done), r.Valid)
	if r.found[bad] {
		return // the work is missing, or done elsewhere, and that is reported
	}
	r.report(bad, at(s.Title.Span, "only promised", fmt.Sprintf("The title says %s, and nothing in the step does it.", verb),
		fmt.Sprintf("Add the operation, `%s …`, so that the work is told and held against the rest; or call the step by what is done in it.", doneBy[verb][0])))
}

func hasOps(s *model.Step) bool {
	for _, i := range s.Items {
		if _, ok := i.(*model.Op); ok {
			return true
		}
	}
	return false
}

// declares reports whether a pattern has an operation of a verb at all.
func (r *run) declares(verb string) bool {
	for _, op := range r.Ops() {
		if op.Verb == verb || strings.HasPrefix(op.Verb, verb+" ") {
			return true
		}
	}
	return false
}

// tellsTo reports whether a text tells to do something by its verb.
func tellsTo(text, verb string) bool {
	for w := range lettersOf(strings.ToLower(text)) {
		if w == verb {
			return true
		}
	}
	return false
}
