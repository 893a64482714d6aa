package size

import (
	"fmt"
	"math/big"
	"os"
	"strings"
	"testing"
)

const tables = "../../../shared/reference/trade/"

// column is one measure of a published table, smallest size first.
type column struct {
	name   string
	values []*big.Rat
}

// renamed makes a row's key of a column's name. A key with "to" in it would be
// taken for a length, as in neck-to-waist.
var renamed = strings.NewReplacer("_", "-", "bust_to", "bust-upper", "to_cm", "upper-cm")

// blocks reads the tables in a CSV file: a line of names begins one, and a line
// with # ends it. Cells that are no numbers are left out of their column.
func blocks(t *testing.T, file string) (out [][]column) {
	t.Helper()
	src, err := os.ReadFile(tables + file)
	if err != nil {
		t.Skip("The reference table " + file + " is not here; it does not come with the project.")
	}
	fresh := true
	for line := range strings.Lines(string(src)) {
		line = strings.TrimSpace(line)
		switch {
		case line == "" || line[0] == '#':
			fresh = true
			continue
		case fresh:
			var names []column
			for _, n := range strings.Split(line, ",") {
				names = append(names, column{name: renamed.Replace(n)})
			}
			out, fresh = append(out, names), false
			continue
		}
		block := out[len(out)-1]
		for i, v := range strings.Split(line, ",") {
			if r, ok := new(big.Rat).SetString(v); ok {
				block[i].values = append(block[i].values, r)
			}
		}
	}
	return out
}

// table writes a chart of one row of body measures in centimetres. Its sizes
// are numbered, as the standards number theirs by the girth itself.
func table(c column, values []*big.Rat) string {
	var sizes, cells []string
	for i, v := range values {
		sizes = append(sizes, fmt.Sprint(i+1))
		cells = append(cells, strings.TrimSuffix(strings.TrimRight(v.FloatString(2), "0"), "."))
	}
	return fmt.Sprintf("unit: cm\nsizes: [%s]\nbody:\n  %s: { values: [%s] }\n", strings.Join(sizes, ", "), c.name, strings.Join(cells, ", "))
}

// columnsOf picks columns by name.
func columnsOf(block []column, names ...string) (out []column) {
	for _, c := range block {
		for _, n := range names {
			if c.name == n && len(c.values) > 3 {
				out = append(out, c)
			}
		}
	}
	return out
}

// published gives the tables that are read: EN 13402-3 girths (bust up to 128
// READ in a secondary source, the rest RECALLED), EN 13402-3 letter codes (READ
// in secondary sources), GB/T 1335.2 figure type A (all of it RECALLED from
// memory, not read; a test of shape, not of the standard).
func published(t *testing.T) map[string][]column {
	out := map[string][]column{}
	en := blocks(t, "size_en13402_3_women_girths_cm.csv")
	out["EN 13402-3 women"] = columnsOf(en[0], "code-size-bust-cm", "bust-from", "bust-upper", "waist-cm-recalled", "hip-cm-recalled")
	letters := blocks(t, "size_en13402_3_letter_codes_cm.csv")[0]
	for _, c := range columnsOf(letters, "from-cm", "upper-cm") { // women first, then men: eight letters each
		c.name = "bust-girth-" + c.name
		out["EN 13402-3 letters"] = append(out["EN 13402-3 letters"],
			column{c.name + "-women", c.values[:8]}, column{c.name + "-men", c.values[8:]})
	}
	for _, b := range blocks(t, "size_gbt1335_2_women_A_cm_RECALLED.csv") {
		out["GB/T 1335.2 (recalled)"] = append(out["GB/T 1335.2 (recalled)"], columnsOf(b,
			"height", "cervicale-height", "sitting-cervicale-height", "arm-length", "waist-height",
			"chest", "neck", "total-shoulder-width", "waist", "hip")...)
	}
	return out
}

// TestPublishedTablesAreClean reads each published column as a chart: none may
// have a finding.
func TestPublishedTablesAreClean(t *testing.T) {
	n := 0
	for name, cols := range published(t) {
		for _, c := range cols {
			n++
			if _, fs := Read("sizes.yaml", []byte(table(c, c.values))); len(fs) > 0 {
				t.Errorf("%s, %s:%s", name, c.name, list(fs))
			}
		}
	}
	if n != 5+4+10 {
		t.Errorf("%d columns read, want 19", n)
	}
}

// TestEverySlipOfAStepIsFound changes one cell at a time by the step before it
// and by the step after it, up and down. Each change of a girth must give one
// finding. In lengths the first and the last cell cannot be decided when the
// change makes two sizes equal, because lengths may stay the same.
func TestEverySlipOfAStepIsFound(t *testing.T) {
	for name, cols := range published(t) {
		changed, found, undecided := 0, 0, 0
		for _, c := range cols {
			girth := isGirth(&Row{Key: c.name})
			for i := range c.values {
				for _, slip := range slips(c.values, i) {
					changed++
					_, fs := Read("sizes.yaml", []byte(table(c, slip)))
					atEnd := i == 0 || i == len(c.values)-1
					switch {
					case len(fs) == 1:
						found++
					case len(fs) == 0 && atEnd && !girth:
						undecided++
					default:
						t.Errorf("%s, %s, cell %d changed from %s to %s:%s", name, c.name, i, c.values[i].FloatString(1), slip[i].FloatString(1), list(fs))
					}
				}
			}
		}
		t.Logf("%s: %d changes, %d found, %d undecided at the ends of lengths", name, changed, found, undecided)
	}
}

// slips gives copies of values in which cell i is a step too large or too small.
func slips(values []*big.Rat, i int) (out [][]*big.Rat) {
	seen := map[string]bool{}
	for _, k := range []int{i - 1, i} { // step k leads from value k to value k+1
		if k < 0 || k+1 >= len(values) {
			continue
		}
		step := new(big.Rat).Sub(values[k+1], values[k])
		for _, s := range []*big.Rat{step, new(big.Rat).Neg(step)} {
			if !seen[s.String()] {
				seen[s.String()] = true
				changed := append([]*big.Rat(nil), values...)
				changed[i] = new(big.Rat).Add(values[i], s)
				out = append(out, changed)
			}
		}
	}
	return out
}
