package written

import (
	"regexp"
	"strings"
)

// role is what a column holds.
type role int

// The roles.
const (
	noRole      role = iota
	timeRole         // when a row begins
	untilRole        // when it ends
	runningRole      // minutes from the start
	minutesRole      // how long it takes
	dishRole         //
	textRole         // what is done
	pointsRole       // special points
	besideRole       // its number, ticks, what happened on the day
	needRole         // an amount or a cost: such a table is no plan
)

// headings are the words at the head of a column. The words that stand first in
// it decide; of those at the same place, the first of this list.
var headings = []struct {
	role  role
	words *regexp.Regexp
}{
	{runningRole, regexp.MustCompile(`time in min|minutes? (?:from|since|into|after)|mins? (?:from|since|into|after)|elapsed|running time|cumulative|time from start`)},
	{minutesRole, regexp.MustCompile(`how long|duration|length of time|\bminutes\b|\bmins?\b|time (?:it takes|needed|taken|allowed|allocated|required)|timing \(m`)},
	{besideRole, regexp.MustCompile(`actual|\bstarted\b|\bfinished\b|\bdone\b|\btick|\bcompleted?\b|✓|✔|☐|\bsign|\bwho\b|\bperson\b|^no\.?$|^#|^number|\brow\b|^step no|evaluation|what happened|changes? made|amendment`)},
	{untilRole, regexp.MustCompile(`finish|end time|^end$|\buntil\b|^to$|^stop`)},
	{timeRole, regexp.MustCompile(`what time|\btimes?\b|\btimings?\b|clock|\bwhen\b|^start|\bfrom\b|\bhours?\b`)},
	{dishRole, regexp.MustCompile(`which dish|\bdish(?:es)?\b|recipe|product|\bcourse|menu|component|\bitem|colour|\bfood\b|\bmeal\b`)},
	{needRole, regexp.MustCompile(`cost|price|£|amount|quantit|\bqty\b|supplier|weight|\bunits?\b|\bbuy\b|where from|shelf`)},
	{textRole, regexp.MustCompile(`\bwhat\b|task|method|order of|sequence|process|action|activit|\bjobs?\b|instruction|procedure|description|\bplan\b|stages?|steps?|doing|\bwork\b|\bto do\b|details?|preparation`)},
	{pointsRole, regexp.MustCompile(`special|safety|hygiene|quality|h ?& ?s|health|\bnotes?\b|equipment|\bkit\b|haccp|\bccps?\b|control|critical|risk|hazard|remind|\bwhy\b|reason|contingenc|comment|temperature|\btemp\b|ingredient|sensory|\bchecks?\b|allerg|utensil|resource|points?|remember|tools|advice|justif`)},
}

// longestHeading is more than a column's heading has, in bytes.
const longestHeading = 80

// roleOf reads a column's heading.
func roleOf(heading string) role {
	s := strings.ToLower(strings.Join(strings.Fields(heading), " "))
	if s == "" || len(s) > longestHeading {
		return noRole
	}
	best, at := noRole, len(s)
	for _, h := range headings {
		if found := h.words.FindStringIndex(s); found != nil && found[0] < at {
			best, at = h.role, found[0]
		}
	}
	return best
}
