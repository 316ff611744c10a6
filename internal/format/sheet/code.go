package sheet

import (
	"strings"
	"unicode/utf8"
)

// token is a part of a number's format code (ECMA-376 part 1, 18.8.31).
type token struct {
	kind byte
	text string
}

// Kinds of tokens besides the signs 0 # ? . , % / @ that stand for themselves.
const (
	literal  = 'l'
	moment   = 'd' // part of a date or time, in small letters
	elapsed  = 'e' // hours, minutes or seconds that do not begin again
	halfDays = 'a' // am or pm
	exponent = 'x'
	general  = 'g'
)

// usualFormats are those that a number alone names (ECMA-376 part 1, 18.8.30),
// with dates in the order of the United Kingdom.
var usualFormats = map[string]string{
	"1": "0", "2": "0.00", "3": "#,##0", "4": "#,##0.00", "9": "0%", "10": "0.00%", "11": "0.00E+00", "12": "# ?/?", "13": "# ??/??",
	"14": "dd/mm/yyyy", "15": "d-mmm-yy", "16": "d-mmm", "17": "mmm-yy", "18": "h:mm AM/PM", "19": "h:mm:ss AM/PM", "20": "h:mm", "21": "h:mm:ss",
	"22": "dd/mm/yyyy h:mm", "37": "#,##0;(#,##0)", "38": "#,##0;(#,##0)", "39": "#,##0.00;(#,##0.00)", "40": "#,##0.00;(#,##0.00)",
	"45": "mm:ss", "46": "[h]:mm:ss", "47": "mm:ss.0", "48": "##0.0E+0", "49": "@",
}

// sections are the parts of a code for positive and negative numbers, zero and text.
func sections(code string) [][]token {
	list := [][]token{nil}
	for code != "" {
		if code[0] == ';' {
			list = append(list, nil)
			code = code[1:]
			continue
		}
		t, length := next(code)
		code = code[length:]
		if t.kind != 0 {
			list[len(list)-1] = append(list[len(list)-1], t)
		}
	}
	return list
}

// next is the token that a code begins with and its length.
func next(code string) (token, int) {
	lower := strings.ToLower(code[:min(len(code), 16)])
	switch {
	case code[0] == '"':
		text, _, _ := strings.Cut(code[1:], `"`)
		return token{literal, text}, min(len(text)+2, len(code))
	case code[0] == '[':
		text, _, _ := strings.Cut(code[1:], "]")
		return bracketed(text), min(len(text)+2, len(code))
	case (code[0] == '\\' || code[0] == '_' || code[0] == '*') && len(code) > 1:
		_, n := utf8.DecodeRuneInString(code[1:])
		n++
		switch code[0] {
		case '\\':
			return token{literal, code[1:n]}, n
		case '_':
			return token{literal, " "}, n
		}
		return token{}, n
	case strings.HasPrefix(lower, "general"):
		return token{general, ""}, 7
	case strings.HasPrefix(lower, "am/pm"):
		return token{halfDays, "AMPM"}, 5
	case strings.HasPrefix(lower, "a/p"):
		return token{halfDays, code[:1] + code[2:3]}, 3
	case strings.HasPrefix(lower, "e+") || strings.HasPrefix(lower, "e-"):
		return token{exponent, code[1:2]}, 2
	case strings.IndexByte("0#?.,%/@", code[0]) >= 0:
		return token{code[0], code[:1]}, 1
	case strings.IndexByte("ymdhs", lower[0]) >= 0:
		n := 1
		for n < len(lower) && lower[n] == lower[0] {
			n++
		}
		return token{moment, lower[:n]}, n
	}
	_, n := utf8.DecodeRuneInString(code)
	return token{literal, code[:n]}, n
}

// bracketed is what square brackets hold: elapsed time or a sign of money;
// colours and conditions say nothing of the text.
func bracketed(text string) token {
	lower := strings.ToLower(text)
	if lower != "" && strings.Trim(lower, lower[:1]) == "" && strings.Contains("hms", lower[:1]) {
		return token{elapsed, lower}
	}
	if sign, is := strings.CutPrefix(text, "$"); is {
		sign, _, _ = strings.Cut(sign, "-")
		return token{literal, sign}
	}
	return token{}
}
