package act

import "strings"

// misspelt are spellings that pupils use for short words, and for words that
// are words of their own elsewhere ("role out", "flower"). Invented for this
// table from common practice.
var misspelt = pairs(`
greece=grease greese=grease grese=grease wisk=whisk whisck=whisk wisking=whisking wisked=whisked wip=whip wipping=whipping wiped-cream=whipped
simer=simmer simmer=simmer simmar=simmer simering=simmering choped=chopped chooped=chopped chopp=chop choping=chopping peal=peel peeled=peeled pealed=peeled pealing=peeling peelled=peeled
desert=dessert deserts=desserts dessart=dessert flower=flour flowers=flours flowered=floured role=roll rolle=roll roling=rolling roled=rolled pastery=pastry pastrey=pastry pasty=pasty
sauage=sausage sause=sauce sauze=sauce sorce=sauce source=sauce sorse=sauce weight=weigh wiegh=weigh waigh=weigh way=way brake=break braek=break brek=break stur=stir stirr=stir
bred=bread bowel=bowl bole=bowl bowle=bowl stake=steak meet=meat meat=meat buter=butter buttur=butter creem=cream creme=creme crem=cream egss=eggs egs=eggs eg=egg shugar=sugar suger=sugar
grat=grate graet=grate grater=grater chees=cheese cheeze=cheese tempreture=temperature temprature=temperature temperture=temperature tempeture=temperature temp=temperature temps=temperature
oden=oven ovan=oven ovven=oven overn=oven ofen=oven frige=fridge frigde=fridge fride=fridge fridg=fridge frezer=freezer hobb=hob hobs=hob plat=plate plait=plait severe=serve sirve=serve surve=serve
slise=slice slize=slice dise=dice dicee=dice fy=fry frie=fry fryed=fried friy=fry boill=boil boyl=boil bioled=boiled biol=boil bake=bake bak=bake backe=bake baek=bake
cooll=cool coool=cool kool=cool chil=chill chilll=chill chilly=chilli fold=fold foald=fold need=need neade=knead kneed=knead knede=knead kneding=kneading neading=kneading
wahs=wash wosh=wash washe=wash tidey=tidy tidie=tidy dri=dry cleen=clean claen=clean lien=line tinn=tin trey=tray greesed=greased melte=melt mellt=melt brest=breast chiken=chicken chickin=chicken chickn=chicken
letuce=lettuce tomatos=tomatoes tomatoe=tomato potatos=potatoes potatoe=potato onoin=onion onoins=onions oinion=onion oinions=onions onin=onion union=onion carot=carrot carots=carrots garlick=garlic galic=garlic
serv=serve servin=serving desh=dish dishs=dishes recipie=recipe receipe=recipe thier=their befor=before untill=until intill=until til=until till=until minuets=minutes minuts=minutes mintues=minutes minites=minutes mins=mins
preheet=preheat pre-heet=preheat heet=heat hete=heat decorat=decorate garnsh=garnish garnesh=garnish leeve=leave leve=leave coock=cook cooke=cook kook=cook ot=out ov=of teh=the adn=and nad=and wiht=with whith=with
biscut=biscuit biscuts=biscuits bisket=biscuit custerd=custard cusard=custard merange=meringue maringue=meringue meringe=meringue spounge=sponge speghetti=spaghetti lazagne=lasagne lasagna=lasagne lasange=lasagne
ganash=ganache ganach=ganache shoux=choux chou=choux shoe=choux quich=quiche kiesh=quiche keesh=quiche parmasan=parmesan parmezan=parmesan mozarella=mozzarella bechemel=bechamel besciamella=bechamel roux=roux rue=roux
marinaid=marinade marinaded=marinated marinading=marinating profiteroles=profiteroles prophiteroles=profiteroles sautee=saute sauteed=sauteed brocoli=broccoli brocolli=broccoli parsely=parsley corriander=coriander
tumeric=turmeric cinammon=cinnamon raspberrys=raspberries rasberries=raspberries strawberrys=strawberries rasberry=raspberry caserole=casserole lemmon=lemon vegtables=vegetables veg=vegetables veggies=vegetables vegetabels=vegetables
utensills=utensils equiptment=equipment equiment=equipment equipement=equipment ingrediants=ingredients ingredents=ingredients ingredience=ingredients ings=ingredients surfases=surfaces
peices=pieces peaces=pieces peace=piece thermometre=thermometer degress=degrees degres=degrees degree=degrees deg=degrees degs=degrees centigrade=celsius choc=chocolate mayo=mayonnaise drane=drain drayn=drain cary=carry stiring=stirring frm=from bk=bake
refridgerator=refrigerator refridgerate=refrigerate refridge=refrigerate washingup=washup washup=washup wash-ups=washup preheat=preheat fan-oven=oven micro=microwave mic=microwave
`)

func pairs(text string) map[string]string {
	m := map[string]string{}
	for _, p := range strings.Fields(text) {
		if from, to, ok := strings.Cut(p, "="); ok && from != to {
			m[from] = to
		}
	}
	return m
}

// mend is the word of the kitchen that a written word stands for, or the word
// itself. Words of everyday English are left as they are; of others, those of
// five letters or more are read as the one nearest word of the kitchen: one
// letter may be wrong, from eight letters on two.
func mend(w string) string {
	if to, ok := misspelt[w]; ok {
		return to
	}
	if len(w) < 5 || known(w) {
		return w
	}
	if near, ok := nearest(w, longWords); ok {
		return near
	}
	return w
}

// known says whether a word, as it is or by its stem, needs no mending.
func known(w string) bool {
	s := stem(w)
	return vocabulary[w] || vocabulary[s] || everyday[w] || everyday[s] || phraseWords[w]
}

// nearest is the single nearest of the words within the allowance; its first
// letter is the same, or the first two are swapped.
func nearest(w string, list []string) (string, bool) {
	allow := 1
	if len(w) >= 8 {
		allow = 2
	}
	best, least, twice := "", allow+1, false
	for _, k := range list {
		if k[0] != w[0] && (len(k) < 2 || k[0] != w[1] || k[1] != w[0]) || len(k)-len(w) > allow || len(w)-len(k) > allow {
			continue
		}
		switch d := edits(w, k); {
		case d > allow:
		case d < least, d == least && twice && usual(k):
			best, least, twice = k, d, false
		case d == least && (usual(k) || !usual(best)):
			twice = usual(k) == usual(best)
			best = k
		}
	}
	return best, best != "" && !twice
}

// usual says whether a word is a verb of cooking: of words equally near it is the one that is meant.
func usual(w string) bool {
	v := lexicon[stem(w)]
	return v.name != "" && v.kind != Other || w == "stirring"
}

// edits counts the letters to add, drop or change to make one word of the
// other (Levenshtein 1965), a swap of neighbours counting one.
func edits(a, b string) int {
	if len(a) > 30 || len(b) > 30 {
		return max(len(a), len(b))
	}
	var before, last, row [32]int
	for j := range len(b) + 1 {
		last[j] = j
	}
	for i := range len(a) {
		row[0] = i + 1
		for j := range len(b) {
			cost := 1
			if a[i] == b[j] {
				cost = 0
			}
			row[j+1] = min(row[j]+1, last[j+1]+1, last[j]+cost)
			if i > 0 && j > 0 && a[i] == b[j-1] && a[i-1] == b[j] {
				row[j+1] = min(row[j+1], before[j-1]+1)
			}
		}
		before, last = last, row
	}
	return last[len(b)]
}
