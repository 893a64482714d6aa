package dsl

import (
	"sync"

	"github.com/alecthomas/participle/v2"
	"github.com/alecthomas/participle/v2/lexer"
)

// kind is one kind of sentence: how it is written, for messages, its reader, and its
// grammar.
type kind struct {
	form  string
	read  func(*cursor) any // nil if the words do not fit
	parse func(*lexer.PeekingLexer) (any, error)
}

var grammarOptions = []participle.Option{participle.Lexer(definition{}), participle.UseLookahead(participle.MaxLookahead)}

// sentence makes a kind. The grammar is the definition, in participle's notation;
// the reader is made of it, see reader.go, and reads what fits the grammar. The
// grammar says what is wrong with all the rest. Its parser is built when first
// needed, since a run meets few mistakes.
func sentence[T any, P readable[T]](form string) *kind {
	build := sync.OnceValue(func() *participle.Parser[T] {
		return participle.MustBuild[T](grammarOptions...)
	})
	k := &kind{form: form}
	k.read = func(c *cursor) any {
		if n := P(new(T)); n.read(c) && c.at == len(c.toks) {
			return n
		}
		return nil
	}
	k.parse = func(l *lexer.PeekingLexer) (any, error) {
		node, err := build().ParseFromLexer(l)
		if err != nil {
			return nil, err
		}
		return node, nil
	}
	return k
}

// understand reads the words of a sentence, which ends at end.
func (k *kind) understand(words *feed) (any, error) {
	if n := k.read(&cursor{toks: words.all()}); n != nil {
		return n, nil
	}
	l, err := lexer.Upgrade(words)
	if err != nil {
		return nil, err
	}
	return k.parse(l)
}

var (
	kindProse   = sentence[Text](`""" text """`)
	kindFigure  = sentence[Figure](`figure "FILE.svg" "What it shows."`)
	kindCaution = sentence[Caution](`caution [warning | caution | notice] [about HAZARD] "TEXT"`)
	kindOp      = sentence[Op]("")
	kindOnOnly  = sentence[OnOnly](`on left only { OPERATIONS }`)
	kindNeeds   = sentence[Needs](`needs 2m of MATERIAL [in view A] [, size 12] [, width 150cm]`)
	kindUse     = sentence[UseMethod](`use method NAME (PARAMETER: WHAT, …)`)
	kindShaping = sentence[Shaping](`dart NAME in EDGE takes 1in [, 4in long]`)
	kindOverlap = sentence[Overlap](`EDGE lies on EDGE [from MARK to MARK]`)
	kindValues  = sentence[ChoiceValues](`NAME "words", NAME "words"`)
	kindMake    = sentence[Make](`make NAME from PIECE, PIECE { EDGE = both EDGE }`)
	kindMakeRow = sentence[MakeEdge](`NAME = [both] EDGE`)
	kindStep    = sentence[Step](`step [NAME] "TITLE" { … }`)
	kindNotion  = sentence[Notion](`notion NAME [COUNT] "WORDS"`)
	kindSupply  = sentence[Supply](`thread "WORDS"`)
	kindMat     = sentence[Material](`fabric NAME "WORDS" [fusible] { widths 45in }`)
	kindChoice  = sentence[Choice](`choice NAME "WORDS" { value "words", value "words" }`)
)

// top, and the maps after it, give the kinds of sentence that a block may hold,
// by first word.
var top = map[string]*kind{
	"pattern": sentence[Pattern](`pattern "TITLE" { … }`),
	"view":    sentence[View](`view LETTER "TITLE" { … }`),
	"option":  sentence[Option](`option NAME "WORDS"`),
	"choice":  kindChoice, "sides": kindChoice,
	"fabric": kindMat, "interfacing": kindMat,
	"notion": kindNotion, "tape": kindNotion, "elastic": kindNotion, "webbing": kindNotion, "cord": kindNotion,
	"thread": kindSupply, "needle": kindSupply, "tool": kindSupply,
	"strip": sentence[Strip](`strip NAME [NUMBER] WIDTH x LENGTH cut COUNT MATERIAL [into NAME, 5 of 3in]`),
	"piece": sentence[Piece](`piece NAME [NUMBER] "WORDS" { … }`),
	"seam":  sentence[Seam](`seam NAME joins EDGE to EDGE[, EDGE] [catching WHAT] [in MATERIAL, MATERIAL] [allow 3/8in]`),
	"dart":  kindShaping, "pleat": kindShaping, "tuck": kindShaping,
	"make":    kindMake,
	"section": sentence[Section](`section "TITLE" { … }`),
	"step":    kindStep,
	"method":  sentence[Method](`method NAME (PARAMETER, …) { … }`),
	"use":     kindUse,
	"include": sentence[Include](`include "FILE.seam"`),
	"caution": kindCaution,
	"word":    sentence[Term](`word "TERM" "EXPLANATION"`),
	"change":  sentence[Change](`change "EDITION" "WHAT CHANGED"`),
	"needs":   kindNeeds,
}

var setting = sentence[Setting](`edition "1.0"`)

var inPattern = map[string]*kind{
	"edition": setting, "maker": setting, "about": setting, "level": setting, "sizes": setting, "language": setting, "packaging": setting,
	"for":    sentence[For](`for children | girls | boys | adults [, heights 92cm to 128cm] [, ages 2 to 8 years]`),
	"kind":   sentence[GarmentKind](`kind outerwear`),
	"allow":  sentence[AllowSetting](`allow 5/8in`),
	"finish": sentence[FinishSetting](`finish seams together with overlock, press toward back`),
	"needs":  kindNeeds,
	"spare":  sentence[Spare](`spare 15%`),
	"figure": kindFigure,
}

var inMaterial = map[string]*kind{
	"widths": sentence[Widths](`widths 45in, 60in`), "suggested": setting, "no": sentence[NoRightSide](`no right side`),
	"shrinks": sentence[Shrinks](`shrinks 3%`), "selvedges": sentence[Selvedges](`selvedges 1cm`), "clearance": sentence[Clearance](`clearance 3mm`),
	"lay": sentence[Laying](`lay with nap | without nap | single layer | on lengthwise fold | on crosswise fold, …`),
}

var wear = sentence[Wear](`wear hood | neck | waist | hem | sleeve | back | elsewhere [, draws up | ties | trims | binds] [, ends free | fixed | toggle | knot] [, one loop] [, outside 3in] [, retractable]`)

var property = sentence[Property](`length 7in or length sizes.zip`)

var inNotion = map[string]*kind{
	"length": property, "width": property, "diameter": property, "thickness": property,
	"sides": sentence[Parts](`sides left, right`), "set": sentence[Parts](`set of socket, stud`), "cut": sentence[CutLengths](`cut 2 of 26in`),
	"wear": wear, "fill": trait,
}

var inStrip = map[string]*kind{"wear": wear}

var trait = sentence[Trait](`symmetric`)

var cutAt = sentence[CutAt](`cut at LINE when VIEW`)

var inPiece = map[string]*kind{
	"edges":     sentence[Edges](`edges NAME, NAME, mark NAME, NAME`),
	"marks":     sentence[Marks](`marks NAME on EDGE, 3 NAME inside`),
	"cut":       sentence[Cut](`cut COUNT MATERIAL [mirrored | on fold EDGE | right side up | glue side up | alike] [on bias] [as NAME, NAME]`),
	"drawn":     sentence[Drawn](`drawn as right`),
	"wear":      wear,
	"worn":      sentence[Worn](`worn face in`),
	"same":      sentence[SameShape](`same shape as PIECE.EDGE[, flipped]`),
	"symmetric": trait, "template": trait, "separate": trait,
	"fold": sentence[FoldLine](`fold line NAME`),
	"raw":  sentence[Left](`raw EDGE, EDGE`), "selvage": sentence[Left](`selvage EDGE`),
	"outline": sentence[Outline](`outline "FILE.svg"`),
	"dart":    kindShaping, "pleat": kindShaping, "tuck": kindShaping,
}

var inStep = map[string]*kind{
	"try": sentence[TryOn](`try on "WORDS"`), "use": kindUse,
}

var anyBlock = map[string]*kind{"figure": kindFigure, "caution": kindCaution}

var inSection = map[string]*kind{"step": kindStep, "use": kindUse}

// blocks gives the kinds that a block may hold besides the ones of anyBlock, by
// the word that opens it.
var blocks = map[string]map[string]*kind{
	topBlock: top, "method": top, "pattern": inPattern, "view": {"figure": kindFigure}, "piece": inPiece, "section": inSection, "step": inStep,
	"fabric": inMaterial, "interfacing": inMaterial, "strip": inStrip,
	"notion": inNotion, "tape": inNotion, "elastic": inNotion, "webbing": inNotion, "cord": inNotion,
}

// operates reports whether a block holds operations.
func operates(block string) bool { return block == "step" || block == "on" }

// holdsPieces reports whether a block is the whole file or a method.
func holdsPieces(block string) bool { return block == topBlock || block == "method" }

// holdsAny reports whether a block may hold figures and cautions, which are then
// printed in their place.
func holdsAny(block string) bool { return block == "step" || block == "on" || block == "section" }

// kindOf finds the kind of a sentence in its block, nil if its first word says
// nothing there. verb is set for an operation, words is how many words it has.
func kindOf(block string, s *Sentence) (k *kind, verb string, words int) {
	switch {
	case len(s.Head) == 0:
		return nil, "", 0
	case s.Head[0].Kind == Prose:
		return kindProse, "", 0
	case s.Head[0].Kind != Word:
		return nil, "", 0
	case block == "choice" || block == "sides":
		return kindValues, "", 0
	case block == "make":
		return kindMakeRow, "", 0
	}
	first := s.First()
	if operates(block) {
		if first == "on" {
			return kindOnOnly, "", 0
		}
		if verb, words = verbAt(s.Head); verb != "" {
			return kindOp, verb, words
		}
	}
	if block == "piece" && first == "cut" && len(s.Head) > 1 && s.Head[1].Is("at") {
		return cutAt, "", 0
	}
	if k := declared(block, first); k != nil {
		return k, "", 0
	}
	if holdsPieces(block) && hasWord(s.Head, "lies") {
		return kindOverlap, "", 0
	}
	return nil, "", 0
}

// declared gives the kind that a block has for a first word, nil for none.
func declared(block, first string) *kind {
	if k := blocks[block][first]; k != nil {
		return k
	}
	if holdsAny(block) {
		return anyBlock[first]
	}
	return nil
}

// opensSentence reports whether some block has sentences that begin with a word.
func opensSentence(word string) bool {
	for _, kinds := range blocks {
		if kinds[word] != nil {
			return true
		}
	}
	return anyBlock[word] != nil || verbs[word] != ""
}

func hasWord(toks []Token, word string) bool {
	for _, t := range toks {
		if t.Is(word) {
			return true
		}
	}
	return false
}

// begins reports whether two tokens plainly begin a sentence of a block, and not
// a line of some longer sentence: a word that the block knows, then what may
// follow such a word.
func begins(block string, t, next Token) bool {
	if t.Kind != Word {
		return false
	}
	if declared(block, t.Text) == trait {
		return true
	}
	known := declared(block, t.Text) != nil
	if operates(block) && !known {
		verb, _ := verbAt([]Token{t, next})
		known = verb != "" || t.Is("on")
	}
	if !known || next.First {
		return false
	}
	switch next.Kind {
	case Word, String, Number, Measure:
		return true
	}
	return false
}

// expected lists the first words that a block understands, for messages.
func expected(block string) []string {
	var all []string
	for w := range blocks[block] {
		all = append(all, w)
	}
	if operates(block) {
		all = append(all, Verbs()...)
		all = append(all, "on")
	}
	if holdsAny(block) {
		all = append(all, "figure", "caution")
	}
	return all
}
