package check

// besides says of a few rules why their failing example gives something else than
// exactly one finding that counts.
var besides = map[string]string{
	"mistakes-not-listed": "It stands at the end of two hundred other findings; here each of them is a sign that means nothing.",
	"not-checked":         "It never counts as found; it only lists what was not decided.",
}
