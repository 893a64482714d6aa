package main

import "testing"

func TestClosing(t *testing.T) {
	hint := [2]string{"--unchecked", "--accepted"}
	cases := []struct {
		dir    string
		counts counts
		show   shown
		want   string
	}{
		{"x", counts{}, shown{hint: hint}, "x: nothing found."},
		{".", counts{}, shown{hint: hint}, "This folder: nothing found."},
		{"x", counts{found: 1}, shown{hint: hint}, "1 finding in x."},
		{".", counts{found: 2}, shown{hint: hint}, "2 findings in this folder."},
		{"x", counts{advice: 1}, shown{hint: hint}, "x: nothing found but 1 piece of advice."},
		{"x", counts{found: 2, advice: 3}, shown{hint: hint}, "2 findings and 3 pieces of advice in x."},
		{"x", counts{unchecked: 1}, shown{hint: hint}, "x: nothing found; 1 thing was not checked (list it with --unchecked)."},
		{"x", counts{unchecked: 2}, shown{hint: hint}, "x: nothing found; 2 things were not checked (list them with --unchecked)."},
		{"x", counts{found: 2, unchecked: 3}, shown{unchecked: true, hint: hint}, "2 findings in x; 3 things were not checked."},
		{"x", counts{accepted: 1}, shown{hint: hint}, "x: nothing found; 1 finding is accepted (list it with --accepted)."},
		{"x", counts{accepted: 2, unchecked: 1}, shown{hint: hint},
			"x: nothing found; 2 findings are accepted (list them with --accepted); 1 thing was not checked (list it with --unchecked)."},
		{"x", counts{accepted: 2}, shown{accepted: true, hint: hint}, "x: nothing found; 2 findings are accepted."},
		{"x", counts{accepted: 2}, shown{}, "x: nothing found; 2 findings are accepted."},
	}
	for _, c := range cases {
		if got := closing(c.dir, c.counts, &c.show); got != c.want {
			t.Errorf("%q, want %q", got, c.want)
		}
	}
}
