package act

import "strings"

// phrases are words that mean one thing together. The left side is read by
// words, longest first; the right side is the word they are read as. Those that
// begin with "a-" are nouns, whatever their parts would be.
var phrases = phraseTable(`
wash up|washup
skewer test|test
knife test|test
w / up|washup
w / u|washup
oven heating|preheat
washing up|washup
washed up|washup
wash-up|washup
washing-up|washup
washing up liquid|a-soap
do the dishes|washup
do dishes|washup
doing dishes|washup
doing the dishes|washup
wash the dishes|washup
dry up|washup
drying up|washup
clear up|tidy
clearing up|tidy
clear away|tidy
tidy up|tidy
clean up|tidy
cleaning up|tidy
clean as you go|tidy
clear as you go|tidy
pack away|tidy
clear down|cleandown
clean down|cleandown
cleaning down|cleandown
cleaned down|cleandown
wipe down|cleandown
wiping down|cleandown
wiped down|cleandown
close down|cleandown
clear-down|cleandown
clean-down|cleandown
egg wash|a-eggwash
egg-wash|a-eggwash
eggwash|a-eggwash
blind bake|bake
blind-bake|bake
bake blind|bake
baked blind|bake
baking blind|bake
blind baking|bake
blind baked|bake
panna cotta|a-pannacotta
pannacotta|a-pannacotta
grill pan|a-grillpan
griddle pan|a-grillpan
rest of the|remaining
rest of|remaining
the rest|remaining
bread crumbs|breadcrumbs
bread crumb|breadcrumbs
creme pat|a-custard
creme patissiere|a-custard
pastry cream|a-custard
swiss roll|a-swissroll
swiss rolls|a-swissroll
sausage roll|a-sausagerolls
sausage rolls|a-sausagerolls
bread roll|a-rolls
bread rolls|a-rolls
ice cream|a-icecream
ice-cream|a-icecream
ice water|a-water
iced water|a-water
ice bath|a-icebath
sour cream|a-sourcream
clotted cream|a-cream
whipped cream|a-cream
double cream|a-cream
whipping cream|a-cream
single cream|a-cream
butter cream|a-buttercream
butter icing|a-buttercream
buttercream icing|a-buttercream
cream cheese|a-creamcheese
chantilly cream|a-cream
cream filling|a-cream
cream puffs|a-puffs
cream buns|a-buns
choux buns|a-buns
royal icing|a-icing
glace icing|a-icing
icing sugar|a-icingsugar
spring onions|a-onion
spring onion|a-onion
spring rolls|a-springroll
spring roll|a-springroll
spring form|a-tin
springs back|done
spring back|done
pop corn|a-popcorn
popcorn|a-popcorn
mise en place|setup
set up|setup
setting up|setup
set-up|setup
get set up|setup
ready to serve|readytoserve
get ready to serve|readytoserve
getting ready to serve|readytoserve
get ready|getready
getting ready|getready
got ready|getready
set aside|setaside
put aside|setaside
put to one side|setaside
set to one side|setaside
leave to one side|setaside
leave aside|setaside
put to the side|setaside
to one side|aside
on the side|aside
on one side|aside
to the boil|boil
to a boil|boil
to boil|boil
to the simmer|simmer
to a simmer|simmer
bring to the boil|boil
bring to a boil|boil
bring to boil|boil
bring to a simmer|simmer
stir fry|stirfry
stir-fry|stirfry
stir frying|stirfry
stirfry|stirfry
deep fry|deepfry
deep-fry|deepfry
deep fat fry|deepfry
deep frying|deepfry
deep-fat fry|deepfry
shallow fry|fry
shallow-fry|fry
pan fry|fry
pan-fry|fry
pan fried|fry
dry fry|fry
dry-fry|fry
stir fried|stirfry
pre heat|preheat
pre-heat|preheat
pre heating|preheat
pre-heating|preheat
pre heated|preheated
pre-heated|preheated
re heat|reheat
re-heat|reheat
warm up|reheat
warm through|reheat
heat up|heat
heat through|reheat
heated through|reheat
keep warm|keephot
keep hot|keephot
keeping warm|keephot
kept warm|keephot
hold hot|keephot
hot hold|keephot
hot-hold|keephot
hot holding|keephot
stay warm|keephot
dish up|plateup
dishing up|plateup
dished up|plateup
plate up|plateup
plating up|plateup
plated up|plateup
platting up|plateup
knock back|knockback
knock-back|knockback
knocked back|knockback
knocking back|knockback
take off|takeoff
taken off|takeoff
bring out|takeout
take out|takeout
taken out|takeout
took out|takeout
taking out|takeout
get out|getout
got out|getout
getting out|getout
pull out|takeout
lift out|takeout
remove|takeout
removed|takeout
removing|takeout
come out|takeout
comes out|takeout
coming out|takeout
turn out|turnout
turned out|turnout
turning out|turnout
tip out|turnout
cut out|stamp
cutting out|stamp
stamp out|stamp
roll out|roll
rolled out|roll
rolling out|roll
line up|linger
half an hour|halfhour
half hour|halfhour
half-hour|halfhour
quarter of an hour|quarterhour
three quarters of an hour|threequarterhour
an hour and a half|hourhalf
hour and a half|hourhalf
one hour|onehour
an hour|onehour
al dente|aldente
hot oven|a-hotoven
moderate oven|a-moderateoven
cool oven|a-cooloven
slow oven|a-cooloven
warm oven|a-warmoven
low oven|a-cooloven
very hot oven|a-veryhotoven
fairly hot oven|a-fairlyhotoven
very cool oven|a-verycooloven
medium oven|a-moderateoven
golden brown|golden
light brown|golden
lightly browned|golden
stiff peaks|stiffpeak
stiff peak|stiffpeak
soft peaks|softpeak
soft peak|softpeak
food processor|a-processor
stand mixer|a-mixer
hand whisk|a-handwhisk
electric whisk|a-electricwhisk
hand mixer|a-mixer
warm place|a-warmplace
warm spot|a-warmplace
airing cupboard|a-warmplace
proving drawer|a-warmplace
somewhere warm|a-warmplace
cook books|a-book
coconut milk|a-coconutmilk
coconut cream|a-coconutmilk
coconut oil|a-oil
peanut butter|a-peanutbutter
stock cube|a-stock
stock pot|a-stock
salad dressing|a-dressing
cool down|cool
cooling down|cool
cooled down|cool
cool off|cool
cool completely|cool
turn down|turndown
turned down|turndown
turning down|turndown
turn up|turnup
turn off|turnoff
turned off|turnoff
turning off|turnoff
switch off|turnoff
switched off|turnoff
turn on|turnon
turned on|turnon
turning on|turnon
switch on|turnon
switched on|turnon
switching on|turnon
put on|puton
putting on|puton
put in|putin
putting in|putin
pop in|putin
goes in|putin
going in|putin
go in|putin
put back|putin
pot wash|washup
hand wash|handwash
hand washing|handwash
hand-wash|handwash
soap and water|a-soap
hair up|hairup
hair tied|hairup
tie hair|hairup
tie back hair|hairup
tie hair back|hairup
tie up hair|hairup
oven gloves|a-gloves
oven glove|a-gloves
oven door|a-door
oven shelf|a-shelf
oven shelves|a-shelf
oven cloth|a-gloves
oven cloths|a-gloves
oven chips|a-chips
oven dish|a-dish
oven tray|a-tray
oven proof dish|a-dish
ovenproof dish|a-dish
oven-proof dish|a-dish
fan oven|oven
gas oven|oven
electric oven|oven
fire blanket|a-blanket
paper cases|a-cases
cake cases|a-cases
bun cases|a-cases
muffin cases|a-cases
sugar paper|a-paper
grease proof paper|a-paper
greaseproof paper|a-paper
grease proof|a-paper
greaseproof|a-paper
grease-proof paper|a-paper
baking paper|a-paper
baking parchment|a-paper
set table|laytable
set the table|laytable
lay table|laytable
lay the table|laytable
laying table|laytable
laying the table|laytable
set my table|laytable
lay up table|laytable
table set|laytable
table laid|laytable
set timer|timer
set the timer|timer
set a timer|timer
setting timer|timer
timer set|timer
timer on|timer
put timer on|timer
timer goes off|timer
start timer|timer
start the timer|timer
timer for|timer for
`)

type phrase struct {
	parts []string
	as    string
}

// phraseTable holds the phrases by their first word, longest first.
func phraseTable(lines string) map[string][]phrase {
	table := map[string][]phrase{}
	for _, l := range strings.Split(strings.TrimSpace(lines), "\n") {
		from, as, _ := strings.Cut(l, "|")
		p := phrase{strings.Fields(from), as}
		list := table[p.parts[0]]
		i := 0
		for i < len(list) && len(list[i].parts) >= len(p.parts) {
			i++
		}
		table[p.parts[0]] = append(list[:i:i], append([]phrase{p}, list[i:]...)...)
	}
	return table
}

// phraseWords are the words of the phrases.
var phraseWords = func() set {
	s := set{}
	for _, list := range phrases {
		for _, p := range list {
			for _, w := range p.parts {
				s[w] = true
			}
		}
	}
	return s
}()

// joinPhrases puts one token in the place of each phrase.
func joinPhrases(ts []token) (joined []token) {
	for i := 0; i < len(ts); {
		p, ok := phraseAt(ts, i)
		if !ok {
			joined = append(joined, ts[i])
			i++
			continue
		}
		last := ts[i+len(p.parts)-1]
		joined = append(joined, token{kind: word, text: p.as, stem: stem(p.as), start: ts[i].start, end: last.end, purpose: p.parts[0] == "to"})
		i += len(p.parts)
	}
	return joined
}

func phraseAt(ts []token, i int) (phrase, bool) {
	if ts[i].kind != word {
		return phrase{}, false
	}
next:
	for _, p := range phrases[ts[i].text] {
		for j, w := range p.parts {
			if t := at(ts, i+j); t.kind == number || t.text != w {
				continue next
			}
		}
		return p, true
	}
	return phrase{}, false
}
