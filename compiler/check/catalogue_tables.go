package check

import (
	"fmt"
	"strings"

	"seamwarden/compiler/condition"
	"seamwarden/compiler/measure"
	"seamwarden/compiler/model"
	"seamwarden/compiler/size"
	"seamwarden/dsl/finding"
)

// The tables of how much cloth to buy, and of lengths by view.
func init() {
	register(Rule{ID: "cloth-falls-with-size", Severity: finding.Warning, Category: "sizes", run: clothFalls,
		Purpose: "A larger size needs less cloth than a smaller one.",
		Why:     "Equal neighbours are common, less is mostly a slip of the hand; somebody buys too little."})
	register(Rule{ID: "wider-cloth-needs-more", Severity: finding.Warning, Category: "sizes", run: widerNeedsMore,
		Purpose: "More of a wide cloth is asked for than of a narrow one.",
		Why:     "What fits on a narrow cloth fits on a wide one too: the two rows were probably exchanged."})
	register(Rule{ID: "cloth-not-told", Severity: finding.Warning, Category: "sizes", FromAbsence: true, run: clothNotTold,
		Purpose: "The table tells how much cloth to buy, but not for every garment, material or width.",
		Why:     "Whoever makes that view, or finds that width in the shop, has to guess."})
	register(Rule{ID: "length-not-told", Severity: finding.Warning, Category: "sizes", FromAbsence: true, run: lengthNotTold,
		Purpose: "The finished length is told for some garments only.",
		Why:     "Views mostly differ in length; whoever chooses between them looks for it."})
}

func (r *run) clothRows() (all []size.DraftRow) {
	if r.Sizes == nil {
		return
	}
	for _, row := range r.Sizes.ClothRows() {
		if r.MaterialOf(row.Row) != nil {
			all = append(all, row)
		}
	}
	return
}

// bought words an amount of cloth as the row does.
func bought(row size.DraftRow, i int) string { return measure.Source(row.Values[i], row.Unit) }

func clothFalls(r *run) {
	for _, row := range r.clothRows() {
		for i := 1; i < len(row.Values); i++ {
			if !row.Has(i) || !row.Has(i-1) || row.Values[i].Cmp(row.Values[i-1]) >= 0 {
				continue
			}
			f := at(row.ValueSpans[i], "less than before", fmt.Sprintf("Size %s needs %s of %s, and the smaller size %s needs %s.", row.SizesOf(r.Sizes)[i], bought(row, i), lower(r.MaterialOf(row.Row).Name), row.SizesOf(r.Sizes)[i-1], bought(row, i-1)),
				"Look at the layouts of both again; where one lies better, give both the larger amount.")
			r.report(r.RowCond(row.Row), also(f, row.ValueSpans[i-1], "the smaller size"))
			r.tell(row.Row, condition.True)
			break
		}
	}
}

func widerNeedsMore(r *run) {
	rows := r.clothRows()
	for _, wide := range rows {
		for _, narrow := range rows {
			if r.MaterialOf(wide.Row) != r.MaterialOf(narrow.Row) || wide.Draft != narrow.Draft || narrow.Width.Length.IsZero() || narrow.Width.Length.Cmp(wide.Width.Length) >= 0 {
				continue
			}
			for i := range wide.Values {
				if !wide.Has(i) || !narrow.Has(i) || wide.Values[i].Cmp(narrow.Values[i]) <= 0 {
					continue
				}
				f := at(wide.ValueSpans[i], "more than of the narrow one", fmt.Sprintf("In size %s, %s of %s lying %s wide are asked for, and only %s lying %s wide.", wide.SizesOf(r.Sizes)[i], bought(wide, i), lower(r.MaterialOf(wide.Row).Name), wide.Width, bought(narrow, i), narrow.Width),
					"Exchange the two rows if they stand at each other's place; else correct the larger one.")
				bad := r.Space.And(r.RowCond(wide.Row), r.RowCond(narrow.Row))
				r.report(r.unsaid(wide.Row, r.unsaid(narrow.Row, bad)), also(f, narrow.ValueSpans[i], "the narrow one"))
				break
			}
		}
	}
}

// clothNotTold looks at each material in a table that tells of any: whether it is
// there in every garment that needs the material, and for every width that the
// pattern offers it in.
func clothNotTold(r *run) {
	if len(r.clothRows()) == 0 {
		return
	}
	for _, m := range r.Materials {
		told := r.toldOf(m, nil)
		r.report(r.Space.Diff(m.Cond, told), at(m.Span, "how much?", fmt.Sprintf("The table does not tell how much of %s to buy.", lower(m.Name)),
			fmt.Sprintf("Add a row to `cloth`: NAME: { of: %s, width: …, values: […] }, for every garment that needs it.", m.ID)))
		for i := range m.Widths {
			w := &m.Widths[i]
			r.report(r.Space.Diff(told, r.toldOf(m, w)), at(w.Span, "how much of this width?", fmt.Sprintf("The table does not tell how much of %s to buy where it lies %s wide.", lower(m.Name), w.Measure),
				"Add a row to `cloth` for this width, or take the width out."))
		}
	}
}

// toldOf is where a row tells how much of a material to buy, in a width or in
// any. A row that names no width holds for all.
func (r *run) toldOf(m *model.Material, w *model.Amount) condition.Cond {
	c := condition.False
	for _, row := range r.clothRows() {
		if r.MaterialOf(row.Row) == m && (w == nil || row.Width.Length.IsZero() || row.Width.Length == w.Length) {
			c = r.Space.Or(c, r.RowCond(row.Row))
		}
	}
	return c
}

// lengthNotTold looks at finished rows whose words speak of a length.
func lengthNotTold(r *run) {
	if r.Sizes == nil {
		return
	}
	told := condition.False
	var first *size.Row
	for i := range r.Sizes.Finished {
		row := &r.Sizes.Finished[i]
		if !strings.Contains(lower(row.Key+" "+row.Name), "length") {
			continue
		}
		told = r.Space.Or(told, r.RowCond(row))
		if first == nil {
			first = row
		}
	}
	if first != nil {
		r.report(r.Space.Not(told), at(first.KeySpan, "for some garments only", "The finished length is told for some garments and not for the others.", "Add a row with the length of these too."))
	}
}
