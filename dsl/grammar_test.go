package dsl

import (
	"fmt"
	"reflect"
	"strings"
	"testing"
)

// TestNodes asserts what sentences are read as, above all those that could be
// read in two ways.
func TestNodes(t *testing.T) {
	for _, c := range []struct{ block, in, want string }{
		{"", `seam a "A" joins hood.neck or collar.neck to front.neck, back.neck catching zip.left, 5 loop at marks in outer, lining allow 5/8in to 3/8in when A`,
			`Seam(ID=a Label="A" Joins=hood.neck or collar.neck To=front.neck, back.neck Clause=[SeamBit(Catching=[Caught(What=[zip.left]) Caught(Count=5 What=[loop] At=marks)]) SeamBit(In=[outer lining]) SeamBit(Allow=5/8in AllowTo=3/8in)] Guard=when A)`},
		{"", `seam z joins a to b catching zip-a.left or zip-b.left, 2 loop`, `Seam(ID=z Joins=a To=b Clause=[SeamBit(Catching=[Caught(What=[zip-a.left zip-b.left]) Caught(Count=2 What=[loop])])])`},
		{"", `seam b joins sleeve.cap from x to y to front.armhole allow none`, `Seam(ID=b Joins=sleeve.cap from x to y To=front.armhole Clause=[SeamBit(None)])`},
		{"", `seam c joins a to b from x to y, c with ease 1/2in gathered`, `Seam(ID=c Joins=a To=b from x to y, c Clause=[SeamBit(Ease=1/2in) SeamBit(Gathered)])`},
		{"", `option a "A" when A or not B and (c is d or e is not f)`, `Option(ID=a Label="A" Guard=when A or not B and (c is d or e is not f))`},
		{"", `strip s 12 1 1/2in x 26in cut 1 main on bias into a, 5 of 3in as b`, `Strip(ID=s Number=12 Width=1 1/2in Length=26in Count=1 From=main Lay=[Lay(Bias)] Into=[StripBit(ID=a) StripBit(Count=5 Amount=3in As=b)])`},
		{"", `front.waist lies on facing.waist from a to b when A`, `Overlap(Over=front.waist Base=facing.waist from a to b Guard=when A)`},
		{"", `pleat p in back.neck takes 4in, sewn to stop`, `Shaping(Kind=pleat ID=p In=back.neck Takes=4in To=stop)`},
		{"", `dart d in back.waist takes 1in, 4 1/2in long`, `Shaping(Kind=dart ID=d In=back.waist Takes=1in Long=4 1/2in)`},
		{"", `needs 2 1/2m of main in view B, size 14, width 150cm`, `Needs(Amount=2 1/2m Material=main View=B Size=14 Width=150cm)`},
		{"", `use method m (a: b.c, d: e) when B`, `UseMethod(ID=m Args=[Argument(Param=a Value=b.c) Argument(Param=d Value=e)] Guard=when B)`},
		{"", `step "A"`, `Step(Label="A")`},
		{"", `view 1 "A"`, `View(ID=1 Label="A")`},
		{"", "fabric m \"M\" { } when A", `Material(Kind=fabric ID=m Label="M" Guard=when A)`},
		{"pattern", `finish seams together with overlock, press toward back`, `FinishSetting(How=together With=overlock Toward=back)`},
		{"pattern", `finish seams press open`, `FinishSetting(Open)`},
		{"piece", `cut 2 main mirrored as outer, inner on bias when B`, `Cut(Count=2 Material=main Lay=[Lay(Mirrored) Lay(As=[outer inner]) Lay(Bias)] Guard=when B)`},
		{"piece", `cut 1 main on fold centre on crossgrain for each welt when B`, `Cut(Count=1 Material=main Lay=[Lay(Fold FoldEdge=centre) Lay(Crossgrain)] ForEach=welt Late=when B)`},
		{"piece", `cut 2 main on fold right side up`, `Cut(Count=2 Material=main Lay=[Lay(Fold) Lay(Side=right)])`},
		{"piece", `cut at line-c when C`, `CutAt(Line=line-c Guard=when C)`},
		{"piece", `edges a, mark b, c when A, d`, `Edges(Of=[Edge(ID=a) Edge(Mark ID=b) Edge(ID=c Guard=when A) Edge(ID=d)])`},
		{"piece", `marks n on raglan, p inside, 3 q inside`, `Marks(Of=[Mark(ID=n On=raglan) Mark(ID=p Inside) Mark(Count=3 ID=q Inside)])`},
		{"make", `rim = both a.rim or b.rim`, `MakeEdge(ID=rim Both Of=a.rim or b.rim)`},
		{"notion", `length sizes.zip`, `Property(Key=length Ref=sizes.zip)`},
		{"step", `sew crotch from inseam to fly-stop`, `Op(Verb=sew Objects=crotch from inseam to fly-stop)`},
		{"step", `gather cap from a to b to 12in`, `Op(Verb=gather Objects=cap from a to b Phrases=[Phrase(ToAmount=12in)])`},
		{"step", `baste cap to armhole from the right side`, `Op(Verb=baste Objects=cap Phrases=[Phrase(To=armhole) Phrase(Side=right)])`},
		{"step", `slash front along line from mark`, `Op(Verb=slash Objects=front Phrases=[Phrase(Place=along Where=line) Phrase(From=mark)])`},
		{"step", `sew on 1 button at band.end`, `Op(Verb=sew on Count=1 Objects=button Phrases=[Phrase(At=band.end)])`},
		{"step", `buttonhole 1 on band.end for button`, `Op(Verb=buttonhole Count=1 Phrases=[Phrase(On=band.end) Phrase(For=button)])`},
		{"step", `press side toward back on left only`, `Op(Verb=press Objects=side Phrases=[Phrase(Toward=back) Phrase(Only=left)])`},
		{"step", `topstitch flap 1/4in, keeping a, b clear`, `Op(Verb=topstitch Objects=flap Phrases=[Phrase(Distance=1/4in) Phrase(Keeping=a, b)])`},
		{"step", `topstitch flap, keeping a clear when B`, `Op(Verb=topstitch Objects=flap Phrases=[Phrase(Keeping=a)] Guard=when B)`},
		{"step", `topstitch flap, 1/4in through all layers`, `Op(Verb=topstitch Objects=flap Phrases=[Phrase(Distance=1/4in) Phrase(AllLayer)])`},
		{"step", `hem a, b turning 1/4in, 1in by hand`, `Op(Verb=hem Objects=a, b Phrases=[Phrase(Turning=[1/4in 1in]) Phrase(ByHand)])`},
		{"step", `sew a leaving 6in open as gap`, `Op(Verb=sew Objects=a Phrases=[Phrase(Leaving=6in Gap=gap)])`},
		{"step", `press a open as "Press."`, `Op(Verb=press Objects=a Phrases=[Phrase(Open) Phrase(As="Press.")])`},
		{"step", `turn a through gap right side out`, `Op(Verb=turn Objects=a Phrases=[Phrase(Through=gap) Phrase(Out=right)])`},
		{"step", `on left only { }`, `OnOnly(Side=left)`},
		{"step", `try on`, `TryOn()`},
	} {
		s := sentenceIn(t, c.block, c.in)
		if got := dump(reflect.ValueOf(s.Node)); got != c.want {
			t.Errorf("%s\ngot  %s\nwant %s", c.in, got, c.want)
		}
	}
}

// sentenceIn reads a sentence inside a block.
func sentenceIn(t *testing.T, block, in string) *Sentence {
	t.Helper()
	src := in
	opening := map[string]string{"pattern": `pattern "P"`, "piece": "piece p", "make": "make m from p", "notion": "notion n", "step": `step "S"`}
	if block != "" {
		src = opening[block] + " {\n" + in + "\n}"
	}
	f := Parse("a.seam", []byte(src))
	for _, x := range f.Findings {
		t.Errorf("%s: %s", in, x.Headline)
	}
	if block != "" {
		return f.Sentences[0].Body[0]
	}
	return f.Sentences[0]
}

// dump writes a node with the fields that hold something, small nodes as their
// words.
func dump(v reflect.Value) string {
	switch v.Kind() {
	case reflect.Pointer, reflect.Interface:
		if v.IsNil() {
			return "nothing"
		}
		return dump(v.Elem())
	case reflect.Slice:
		var all []string
		for i := range v.Len() {
			all = append(all, dump(v.Index(i)))
		}
		return "[" + strings.Join(all, " ") + "]"
	case reflect.Struct:
		if text, ok := dumpSmall(v.Addr().Interface()); ok {
			return text
		}
		return v.Type().Name() + "(" + strings.Join(dumpFields(v), " ") + ")"
	}
	return fmt.Sprint(v)
}

func dumpFields(v reflect.Value) (all []string) {
	for i := range v.NumField() {
		f, name := v.Field(i), v.Type().Field(i).Name
		switch {
		case f.IsZero() || name == "Tokens" || name == "Extent":
		case name == "Guarded":
			all = append(all, dumpFields(f)...)
		case f.Kind() == reflect.Bool:
			all = append(all, name)
		default:
			all = append(all, name+"="+dump(f))
		}
	}
	return all
}

func dumpSmall(node any) (string, bool) {
	switch n := node.(type) {
	case *Name:
		return n.Text, true
	case *ViewID:
		return n.Text, true
	case *Count:
		return n.Text, true
	case *Amount:
		return n.Text, true
	case *Label:
		return n.Text, true
	case *Ref:
		return strings.Join(n.Parts, "."), true
	case *Run:
		return dumpRun(n), true
	case *Row:
		var all []string
		for _, r := range n.Runs {
			all = append(all, dumpRun(r))
		}
		return strings.Join(all, ", "), true
	case *Guard:
		return "when " + dumpOr(n.Or), true
	}
	return "", false
}

func dumpRun(r *Run) string {
	var all []string
	for _, ref := range r.Alt {
		all = append(all, strings.Join(ref.Parts, "."))
	}
	text := strings.Join(all, " or ")
	if r.From != nil {
		text += " from " + strings.Join(r.From.Parts, ".") + " to " + strings.Join(r.To.Parts, ".")
	}
	return text
}

func dumpOr(or *GuardOr) string {
	var all []string
	for _, and := range or.Of {
		var each []string
		for _, not := range and.Of {
			each = append(each, dumpNot(not))
		}
		all = append(all, strings.Join(each, " and "))
	}
	return strings.Join(all, " or ")
}

func dumpNot(n *GuardNot) (text string) {
	switch {
	case n.Group != nil:
		text = "(" + dumpOr(n.Group) + ")"
	case n.Atom.Is != "" && n.Atom.IsNot:
		text = n.Atom.Name + " is not " + n.Atom.Is
	case n.Atom.Is != "":
		text = n.Atom.Name + " is " + n.Atom.Is
	default:
		text = n.Atom.Name
	}
	if n.Not {
		return "not " + text
	}
	return text
}
