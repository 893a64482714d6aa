package check_test

import (
	"strings"
	"testing"
)

// TestBandsBySize compares tapes, strips and cords with edges in every size: half the
// waist is 150 mm in S and 170 mm in M, the side of both 600 mm.
func TestBandsBySize(t *testing.T) {
	pattern := func(stock, seam, steps string) string {
		return `pattern "Garden Skirt" {
  sizes "sizes.yaml"
  allow 1cm
  finish seams together with overlock, press open
}

fabric main "Main fabric" { widths 140cm }

` + stock + `

option trim "Trim"

piece front 1 "Front" {
  edges waist, side, hem, centre
  outline "front.svg"
  cut 2 main on fold centre as fore, rear
}

seam side joins front.fore.side to front.rear.side` + seam + `

step sew "Sew" {
  sew side
` + steps + `
  hem front.hem turning 1cm, 1cm
}
`
	}
	sizes := func(tape string) string {
		return "unit: cm\nsizes: [S, M]\npattern:\n  hang: { name: Length, values: [60, 62] }\n  tape: { name: Tape, values: " + tape + " }\n"
	}
	bind := "  bind front.waist with tape-a"
	tape := `tape tape-a "Tape" { length sizes.tape }`
	for _, c := range []struct{ what, stock, seam, steps, table, says string }{
		{"two waists with ends", tape, "", bind, "[66, 72]", ""},
		{"short in one size", tape, "", bind, "[66, 66]", "The tape is too short: it is 66 cm long, and goes along 68 cm. in size M"},
		{"short in both", tape, "", bind, "[50, 66]", "The tape is too short in size S: it is 50 cm long, and goes along 60 cm."},
		{"nothing for the ends", tape, "", bind, "[61, 72]", "The tape has nothing left for its ends: it is 61 cm long, and goes along 60 cm. in size S"},
		{"far too long", tape, "", bind, "[130, 130]", "The tape is far longer than is needed in size S"},
		{"far too long, but applied elsewhere", tape, "", bind + "\n  apply tape-a to front.rear", "[130, 130]", ""},
		{"only one waist", tape, "", "  bind front.fore.waist with tape-a\n  finish front.rear.waist with overlock", "[33, 36]", ""},
		{"twice where there is trim", tape, "", bind + "\n  cover side with tape-a when trim", "[130, 136]", "The tape is too short"},
		{"what is cut", `tape tape-a "Tape" { cut 2 of sizes.tape }`, "", bind, "[33, 36]", ""},
		{"what is cut, too short", `tape tape-a "Tape" { cut 2 of sizes.tape }`, "", bind, "[33, 33]", "it is 66 cm long, and goes along 68 cm"},
		{"a strip", `strip tape-a 4cm x 66cm "Binding" cut 1 main on bias`, "", bind, "[1, 2]", "goes along 68 cm"},
		{"a cord in its casing", `cord tape-a "Cord" { length sizes.tape }`, "", "  hem front.waist turning 1cm, 1cm leaving 2cm open as slot\n  thread tape-a through slot\n  knot tape-a\n  close slot", "[66, 66]", "The cord is too short: it is 66 cm long, and goes along 68 cm. in size M"},
		{"a long cord", `cord tape-a "Cord" { length sizes.tape }`, "", "  hem front.waist turning 1cm, 1cm leaving 2cm open as slot\n  thread tape-a through slot\n  knot tape-a\n  close slot", "[160, 160]", ""},
		{"a loop in a seam", tape, " catching tape-a", "  hem front.waist turning 1cm, 1cm", "[8, 8]", ""},
	} {
		found, sources := findings(t, map[string]string{"pattern.seam": pattern(c.stock, c.seam, c.steps), "front.svg": frontOf("none"), "sizes.yaml": sizes(c.table)})
		var list []string
		for _, f := range counting(found) {
			if f.Rule != "name-never-used" && f.Rule != "option-never-used" && f.Rule != "pattern-row-never-used" {
				list = append(list, saidOf(f))
			}
		}
		if got := strings.Join(list, "\n"); c.says == "" && got != "" || c.says != "" && (len(list) != 1 || !strings.Contains(got, c.says)) {
			t.Errorf("%s: want %q, got\n%s", c.what, c.says, written(counting(found), sources))
		}
	}
}
