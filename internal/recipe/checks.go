package recipe

import "strings"

// checkWords are quality words that stand without "until".
var checkWords = []string{
	"golden brown", "golden", "springs back", "al dente", "coats the back", "coats the spoon", "doubled in size", "doubled", "firm", "wobble", "skewer comes out clean", "comes out clean", "juices run clear",
	"run clear", "piping hot", "crisp", "stiff peaks", "soft peaks", "reduced by half", "hollow", "smooth and elastic", "tender", "translucent", "bubbling", "just set", "thickened", "pale and fluffy", "light and fluffy", "breadcrumbs", "dropping consistency", "opaque", "cooked through", "no longer pink", "fragrant", "well risen", "risen",
}

// checksOf is how the cook knows that the step is right: the words after "until", else quality words.
func checksOf(text string, j *job) string {
	var out []string
	ts := j.ts
	for i, t := range ts {
		if !t.is("until", "till", "untill") && !(t.is("so") && at(ts, i+1).is("that")) && !(t.is("should") && i > 0) {
			continue
		}
		end := i + 1
		for end < len(ts) && end < i+16 && !ts[end].is(".", ";", "(", ")") && !(ts[end].is(",") && !listGoesOn(ts, end)) && !ts[end].is("then") {
			end++
		}
		if at(ts, i+1).is("needed", "required", "served", "serving", "wanted") || has(ts[i+1:end], "ready to serve", "ready to use", "you need") {
			continue // when it is wanted, and not how it looks
		}
		if next := quote(text, ts, i+1, end); len(next) > 2 && !t.is("so", "should") {
			out = append(out, next)
		} else if t.is("should") {
			out = append(out, quote(text, ts, i-1, end))
		}
	}
	if len(out) == 0 {
		for _, w := range checkWords {
			if has(ts, w) && !strings.Contains(strings.Join(out, " "), w) {
				out = append(out, w)
			}
		}
	}
	return strings.Join(out, "; ")
}

// listGoesOn says that what follows the comma still describes: "smooth, elastic, and lighter".
func listGoesOn(ts []token, i int) bool {
	_, verb := isVerb(ts, i+1)
	return !verb && !at(ts, i+1).is("then", "about", "stirring", "turning") && at(ts, i+1).kind == word && !at(ts, i+1).is("and") || at(ts, i+1).is("and") && func() bool { _, v := isVerb(ts, i+2); return !v }()
}
