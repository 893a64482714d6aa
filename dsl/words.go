package dsl

import "strings"

func set(words string) map[string]bool {
	m := map[string]bool{}
	for _, w := range strings.Fields(words) {
		m[w] = true
	}
	return m
}

var (
	// opensBlock are the words whose sentences may have a block in braces that
	// somebody may forget to open.
	opensBlock = set(`pattern view option choice sides fabric interfacing notion tape elastic webbing cord strip piece make
		section step method on`)

	// joins are the words with which a line goes on with the sentence above it.
	joins = set(`joins to catching in allow when and or not is leaving from on as with by through keeping along
		turning toward of for takes between at into over around together apart x right wrong glue mirrored alike`)

	// asks are the words after which a sentence cannot end. None is ever a name.
	asks = set("joins to catching when and or not from toward")

	// beginsPhrase are the words with which no list of things begins, since a phrase
	// of an operation does.
	beginsPhrase = set(`open toward together apart by through right wrong on at for with to from turning leaving keeping
		catching along around into over between inside in as flat when`)

	// reserved words are never names, since a sentence could then be read two ways.
	reserved = set("to from when and or not is catching joins as at on in by with for into through along leaving keeping toward allow only")
)

// verbs lists the operations of a step with the phrases that each takes besides
// the ones in everyVerb. An operation of two words is written with its space.
// The letters stand for phrases, see phraseForms.
var verbs = map[string]string{
	"sew": "to at catching along flat leaving through open round distance on with", "baste": "to on at distance along through over",
	"staystitch": "distance on", "reinforce": "distance at on", "understitch": "on distance", "edgestitch": "leaving on distance along through catching from to with",
	"topstitch": "leaving on distance along through catching from with", "ditch": "on along through catching", "stitch": "leaving on distance along through at with to",
	"fuse": "on to at", "finish": "together with on", "bind": "with on together", "press": "toward open on flat over along to", "press under": "by on turning",
	"trim": "to by on at", "grade": "to on", "clip": "to at on by", "notch out": "on at", "hem": "leaving turning with on by through",
	"gather": "to on distance at", "ease": "to on", "pleat": "to on at toward", "fold": "along by on to toward over", "tack": "to at on through over",
	"turn": "through out to toward", "turn under": "by turning on", "insert": "into through between at on to", "sew on": "at on to", "apply": "to at on through over",
	"buttonhole": "on at for", "slash": "from along at to on", "cut": "to along at on", "fell": "to over on along", "slipstitch": "to over on along",
	"close": "with on", "mark": "on at with", "bar-tack": "at on through to", "thread": "through into", "join": "to with", "level": "on at",
	"quilt": "along on through distance", "set": "to at on with", "attach": "to at on with", "overlap": "over by on to", "pin": "to on at along over",
	"lay": "on over to along at between", "remove": "on", "open": "by to", "knot": "at", "cover": "with on", "miter": "at on", "roll": "to on", "shirr": "with on to distance",
	"tuck": "along by on to", "steam": "on over", "test": "at on",
}

// everyVerb are phrases that any operation takes.
const everyVerb = "hand keeping as only side"

// phraseForms gives each phrase as it is written, for messages.
var phraseForms = map[string]string{
	"to": "to WHERE or to 12in", "at": "at PLACE", "catching": "catching WHAT", "along": "along EDGE", "flat": "flat", "leaving": "leaving 3in open as gap",
	"through": "through GAP or through all layers", "open": "open", "round": "in the round", "distance": "1/4in", "on": "on SIDE", "together": "together or apart",
	"with": "with WHAT", "toward": "toward PIECE", "over": "over WHAT", "by": "by 1/4in", "turning": "turning 1/4in, 3/4in", "into": "into WHAT",
	"between": "between WHAT", "out": "right side out", "for": "for WHAT", "from": "from MARK to MARK", "hand": "by hand", "keeping": "keeping WHAT clear",
	"as": `as "sentence"`, "only": "on left only", "side": "from the right side",
}

// Verbs lists the operations that a step understands.
func Verbs() []string {
	var all []string
	for v := range verbs {
		all = append(all, v)
	}
	return all
}

// verbAt gives the verb that begins a sentence, the longest that fits.
func verbAt(head []Token) (verb string, words int) {
	if len(head) == 0 || head[0].Kind != Word {
		return "", 0
	}
	first := head[0].Meant()
	if len(head) > 1 && head[1].Kind == Word {
		if two := first + " " + head[1].Text; verbs[two] != "" {
			return two, 2
		}
	}
	if verbs[first] != "" {
		return first, 1
	}
	return "", 0
}
