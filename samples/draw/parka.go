package main

import "seamwarden/samples/draw/draft"

func init() { samples["gale-parka"] = drawParka }

// view is one of the three lengths of the coat.
type view int

const (
	viewA view = iota
	viewB
	viewC
)

// coatSize is what the table of sizes says of one size, in millimetres.
type coatSize struct {
	bust, chest, seat, sleeve, wrist float64
	backLong                         [3]float64 // from the neck to the lower edge, by view
	frontNeck                        float64    // y of the front neck, below the back neck
	bandSeam                         float64    // y of the seam of the hem band
}

func (t *table) coat(i int) coatSize {
	f := func(key string) float64 { return t.finished(key, i) }
	return coatSize{
		bust: t.body("bust", i), chest: f("chest"), seat: f("seat"), sleeve: f("sleeve"), wrist: f("wrist-width"),
		backLong:  [3]float64{f("back-a"), f("back-b"), f("back-c")},
		frontNeck: f("back-a") - f("front-a"),
		bandSeam:  f("back-c") - bandDeep,
	}
}

// coat gathers the drawings of all sizes.
type coat struct {
	table  *table
	blocks []*block
	files  map[string]*draft.Drawing
}

func drawParka(t *table) map[string]*draft.Drawing {
	c := coat{table: t, files: map[string]*draft.Drawing{}}
	for i := range t.Sizes {
		c.blocks = append(c.blocks, newBlock(t.coat(i), t.body("bust", 0)))
	}
	c.shell()
	c.inside()
	c.small()
	return c.files
}

func (c coat) shell() {
	c.byView("front", "Front", viewA, viewB, viewC).of((*block).frontPiece)
	c.byView("centre-front", "Centre front", viewA, viewB, viewC).of((*block).centreFront)
	c.byView("side-front", "Side front", viewA, viewB, viewC).of((*block).sideFront)
	c.byView("back", "Back", viewA, viewB).of((*block).backPiece)
	c.piece("back-yoke", "Back yoke", (*block).backYoke)
	c.piece("lower-back", "Lower back", (*block).lowerBack)
	c.piece("front-sleeve", "Front sleeve", (*block).frontSleeve)
	c.piece("back-sleeve", "Back sleeve", (*block).backSleeve)
	c.piece("hood-side", "Hood side and its lining", (*block).hoodSide)
	c.piece("hood-centre", "Hood centre and its lining", (*block).hoodCentre)
	c.piece("collar", "Collar", (*block).collar)
	c.piece("hem-band", "Hem band", (*block).hemBand)
	c.byView("storm-flap", "Storm flap", viewA, viewB, viewC).of((*block).stormFlap)
}

func (c coat) inside() {
	c.byView("front-facing", "Front facing", viewA, viewB, viewC).of((*block).frontFacing)
	c.piece("neck-facing", "Back neck facing", (*block).neckFacing)
	c.byView("front-hem-facing", "Front hem facing", viewA, viewC).of((*block).frontHemFacing)
	c.byView("back-hem-facing", "Back hem facing", viewA, viewC).of((*block).backHemFacing)
	c.piece("cuff-facing", "Cuff facing", (*block).cuffFacing)
	c.piece("inner-collar", "Inner collar", (*block).innerCollar)
	c.byView("front-lining", "Front lining", viewA, viewB, viewC).of((*block).frontLining)
	c.byView("back-lining", "Back lining", viewA, viewB, viewC).of((*block).backLining)
	c.piece("front-sleeve-lining", "Front sleeve lining", (*block).frontSleeveLining)
	c.piece("back-sleeve-lining", "Back sleeve lining", (*block).backSleeveLining)
}

// small adds what is the same in all sizes.
func (c coat) small() {
	for file, one := range map[string]struct {
		title string
		draw  func() *draft.Piece
	}{
		"hood-peak":     {"Hood peak", hoodPeak},
		"sleeve-tab":    {"Sleeve tab", sleeveTab},
		"pocket-welt":   {"Pocket welt", pocketWelt},
		"pocket-bag":    {"Pocket bag", pocketBag},
		"pocket-facing": {"Pocket facing", pocketFacing},
		"hang-loop":     {"Hang loop", hangLoop},
		"inside-pocket": {"Inside pocket", insidePocket},
	} {
		c.piece(file, one.title, func(*block) *draft.Piece { return one.draw() })
	}
}

func (c coat) piece(file, title string, draw func(*block) *draft.Piece) {
	c.files[file] = c.table.drawing(title, func(i int) *draft.Piece { return draw(c.blocks[i]) })
}

// viewed is a piece with a drawing for each of some views.
type viewed struct {
	coat
	file, title string
	views       []view
}

func (c coat) byView(file, title string, views ...view) viewed { return viewed{c, file, title, views} }

func (w viewed) of(draw func(*block, view) *draft.Piece) {
	for _, v := range w.views {
		w.piece(w.file+"-"+string(rune('a'+v)), w.title, func(b *block) *draft.Piece { return draw(b, v) })
	}
}

func edge(name string, path draft.Path) draft.Edge { return draft.Edge{Name: name, Path: path} }

// straight is the line through places that are given by their x and y.
func straight(xy ...float64) draft.Path {
	var places []draft.Point
	for i := 0; i+1 < len(xy); i += 2 {
		places = append(places, draft.At(xy[i], xy[i+1]))
	}
	return draft.Line(places...)
}
