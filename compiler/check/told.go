package check

import (
	"fmt"
	"strings"

	"seamwarden/compiler/condition"
	"seamwarden/compiler/model"
	"seamwarden/dsl/finding"
)

func init() {
	register(Rule{ID: "text-tells-of-work-not-done", Severity: finding.Advice, Category: "prose", whole: true, ahead: -5, run: toldOf,
		Purpose: "A text speaks of basting, topstitching, a bound edge or the like, and no operation makes it.",
		Why:     "Either the work is missing, or the sentence is left over from another way of sewing; the sewist looks for stitches that are not there."})
}

// outcome is what an operation leaves behind, as texts speak of it.
type outcome struct {
	verb     string
	by       []string // the operations that leave it
	stitches bool     // the word is the name of the stitches, wherever they are; else it is said of a piece of the step
	stem     string   // letters that the text must hold
	words    phrases  // nil for marks, which are nouns
}

// outcomes are words that name what one operation leaves. Turned, sewn, stitched
// and finished are left by too many to say anything.
var outcomes = []outcome{
	said("baste", "bast", "basted", "baste", "tack"),
	said("topstitch", "topstitch", "topstitched", visible...),
	said("edgestitch", "edgestitch", "edgestitched", visible...),
	said("understitch", "understitch", "understitched", "understitch"),
	said("staystitch", "staystitch", "staystitched", "staystitch", "reinforce"),
	said("slipstitch", "slipstitch", "slipstitched", "slipstitch"),
	said("tack", "tacked", "tacked", "tack", "bar-tack", "slipstitch", "stitch", "baste"),
	said("hem", "hemmed", "hemmed", "hem", "press under", "turn under", "fell", "bind", "cover"),
	said("fuse", "fused", "fused", "fuse"),
	said("gather", "gathered", "gathered", "gather", "ease", "shirr", "pleat", "thread", "stitch", "sew"),
	said("clip", "clipped", "clipped", "clip", "notch out", "trim", "grade", "slash", "cut"),
	said("bind", "bound", "bound edge|bound edges|bound end|bound ends", "bind", "cover"),
	said("press under", "pressed", "pressed edge|pressed edges|pressed end|pressed ends", "press under", "turn under", "hem"),
	stitches("baste", "basting", "basting", "baste", "tack"),
	stitches("topstitch", "topstitching", "topstitching", visible...),
	stitches("understitch", "understitching", "understitching", "understitch"),
	stitches("staystitch", "staystitching", "staystitching", "staystitch", "reinforce"),
	stitches("bar-tack", "bar tack", "bar tack|bar tacks", "bar-tack", "tack", "stitch"),
	{"mark", []string{"mark"}, true, "mark", nil},
}

var visible = []string{"topstitch", "edgestitch", "stitch", "quilt", "ditch", "hem", "fell"}

func said(verb, stem, words string, by ...string) outcome {
	return outcome{verb, by, false, stem, strings.Split(words, "|")}
}

func stitches(verb, stem, words string, by ...string) outcome {
	return outcome{verb, by, true, stem, strings.Split(words, "|")}
}

// find gives the first place from one on where a text, in small letters, speaks of
// the outcome; -1 if it does not.
func (o *outcome) find(text string, from int) (start, end int) {
	if o.words != nil {
		return o.words.first(text, from)
	}
	for {
		if start, end = markArticles.first(text, from); start < 0 {
			return -1, -1
		}
		if n := marksBehind(text[end:]); n > 0 {
			return start, end + n
		}
		from = end
	}
}

// markArticles are the words that make a noun of "mark".
var markArticles = phrases{"the", "its", "their", "each", "every", "both", "two"}

// marksBehind gives the length of " mark", " marks" or one more word and these at
// the beginning of a text, 0 if it does not begin so.
func marksBehind(text string) int {
	if text == "" || text[0] != ' ' {
		return 0
	}
	word := 1
	for word < len(text) && letter(text[word]) {
		word++
	}
	for _, at := range []int{word + 1, 1} {
		if at > len(text) || at > 1 && (word == 1 || text[word] != ' ') || !strings.HasPrefix(text[at:], "mark") {
			continue
		}
		end := at + len("mark")
		if end < len(text) && text[end] == 's' && atEdge(text, end+1) {
			end++
		}
		if atEdge(text, end) {
			return end
		}
	}
	return 0
}

// toldOf looks in every text for what no operation leaves.
func toldOf(r *run) {
	w := r.doings()
	small := r.smallWritten()
	for i, t := range r.written() {
		text := small[i]
		if len(text) != len(t.text) {
			continue
		}
		for i := range outcomes {
			if o := &outcomes[i]; strings.Contains(text, o.stem) {
				w.listen(t, text, o)
			}
		}
	}
}

// listen takes the first place of a text where it speaks of an outcome plainly.
// Where a pattern does this kind of work nowhere by an operation, the text that
// tells to do it is enough.
func (w *doings) listen(t stepText, text string, o *outcome) {
	for start, end := o.find(text, 0); start >= 0; start, end = o.find(text, end) {
		hit := []int{start, end}
		sentence := sentenceAt(text, start)
		if supposing.in(sentence) || deniedThere.in(sentence) || strings.HasPrefix(text[end:], " to ") && o.verb == "bind" {
			continue
		}
		done, what := w.everywhere(o), ""
		if !w.any(o) {
			if w.toldAnywhere(o) {
				return
			}
		} else if !o.stitches {
			done, what = w.near(t, text, hit[0], o)
		} else if strings.HasSuffix(text[:hit[0]], "row of ") {
			done = w.onPieces(w.pieces(t, text), o)
		}
		bad := w.r.Space.And(w.r.Space.Diff(t.cond, done), w.r.Valid)
		if bad == condition.False || w.r.found[bad] {
			continue
		}
		w.r.report(bad, w.missing(t, text[hit[0]:hit[1]], what, hit, o))
		return
	}
}

func (w *doings) missing(t stepText, word, what string, hit []int, o *outcome) finding.Finding {
	headline := fmt.Sprintf("The text speaks of “%s”, and no `%s` makes it.", word, o.verb)
	if what != "" {
		headline = fmt.Sprintf("The text says that %s is %s, and no `%s` does it.", the(what), word, o.verb)
	}
	return at(t.at(hit[0], hit[1]), "done nowhere", headline,
		fmt.Sprintf("Add the operation, `%s …`; guard the text as the work is guarded; or take the sentence out.", o.verb))
}

// markIt is how a text tells to mark something; the noun is the same word.
var markIt = expression(`(?:^|[.:;!]\s+|\n\s*|\band |\bthen )(?:mark|transfer) (?:the|all|each|every|both|it|them|where|what|a|on|with|your|its)\b`)

// toldAnywhere reports whether a text of a step tells to do the work. Marks that
// are declared nowhere, and edges that may be bound or pressed in other ways, are
// left to the texts.
func (w *doings) toldAnywhere(o *outcome) bool {
	if w.read == "" {
		var all strings.Builder
		for _, t := range w.r.smallTexts() {
			all.WriteString(" " + t)
		}
		for _, s := range w.r.Steps() {
			all.WriteString(" " + strings.ToLower(s.Title.Text))
		}
		w.read = all.String()
	}
	switch o.verb {
	case "bind", "press under":
		return true
	case "mark":
		return !w.r.marksUsed() || markIt().MatchString(w.read)
	case "bar-tack":
		return strings.Contains(w.read, "bar tack")
	}
	return tellsTo(w.read, o.verb)
}

// marksUsed reports whether a mark is declared and an operation works by it.
func (r *run) marksUsed() bool {
	_, used, _ := r.signs()
	for x := range used {
		if _, ok := x.(*model.Mark); ok {
			return true
		}
	}
	return false
}
