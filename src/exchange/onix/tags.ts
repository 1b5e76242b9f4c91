import type { TagSet } from '../../contract/onix.ts';

// The names of ONIX for Books elements and their short tags. A composite's short tag is its name in small letters;
// a data element has a code of its own. (ONIX for Books 3.0 revision 8 and 3.1 revision 2, EDItEUR.)

const DATA = `
AVDuration x544; AVItemIDType x541; AVItemType x540; AddresseeIDType m380; AddresseeName x300
Affiliation b046; AffiliationIDType x580; AgentIDType j400; AgentName j401; AgentRole j402
AncillaryContentDescription x424; AncillaryContentType x423; AudienceCode b073; AudienceCodeType b204
AudienceCodeTypeName b205; AudienceCodeValue b206; AudienceDescription b207; AudienceHeadingText x578
AudienceRangePrecision b075; AudienceRangeQualifier b074; AudienceRangeValue b076; AwardingBody x584
BarcodeType x312; BatchQuantity j264; BibleContents b352; BiblePurpose b354; BibleReferenceLocation b356
BibleTextFeature b357; BibleTextOrganization b355; BibleVersion b353; BiographicalNote b044
BookClubAdoption k169; CBO j375; CitationNote x434; CitedContentType x430; CityOfPublication b209
CollectionElementLevel x586; CollectionFrequency x582; CollectionIDType x344
CollectionSequenceNumber x481; CollectionSequenceType x479; CollectionSequenceTypeName x480
CollectionType x329; ComplexityCode b078; ComplexitySchemeIdentifier b077; ComponentNumber b289
ComponentTypeName b288; ConferenceAcronym b341; ConferenceDate b054; ConferenceName b052
ConferenceNumber b053; ConferencePlace b055; ConferenceRole b051; ConferenceSponsorIDType b391
ConferenceTheme b342; ContactName x299; ContentAudience x427; ContentDateRole x429
ContributorDateRole x417; ContributorDescription b048; ContributorPlaceRelator x418
ContributorRole b035; ContributorStatement b049; CopiesSold k168; CopyrightOwnerIDType b392
CopyrightStatementText x588; CopyrightType x512; CopyrightYear b087; CorporateName b047
CorporateNameInverted x443; CountriesExcluded x451; CountriesIncluded x449; CountryCode b251
CountryOfManufacture x316; CountryOfPublication b083; CurrencyCode j152; CurrencyZone x475; Date b306
DateFormat j260; DefaultCurrencyCode m186; DefaultLanguageOfText m184; DefaultPriceType x310
DeletionText a199; DiscountAmount x469; DiscountCode j364; DiscountCodeType j363
DiscountCodeTypeName j378; DiscountPercent j267; DiscountType x467; EditionNumber b057
EditionStatement b058; EditionType x419; EditionVersionNumber b217; EmailAddress j272; EndDate b325
EndTime x543; EpubLicense price; EpubLicenseDateRole x585; EpubLicenseExpressionLink x510
EpubLicenseExpressionType x508; EpubLicenseExpressionTypeName x509; EpubLicenseName x511
EpubTechnicalProtection x317; EpubUsageStatus x319; EpubUsageType x318; EpubUsageUnit x321
EventAcronym x517; EventDate x520; EventDescription x550; EventIDType x547; EventName x516
EventNumber x518; EventPlace x521; EventRole x515; EventSponsorIDType x522; EventStatus x549
EventTheme x519; EventType x548; ExpectedDate j302; ExtentType b218; ExtentUnit b220; ExtentValue b219
ExtentValueRoman x421; FaxNumber j271; FeatureNote x440; FeatureValue x439; FirstPageNumber b286
FreeQuantity j265; FromLanguage x412; FundingIDType x523; Gender x524; IDTypeName b233; IDValue b244
Illustrated x422; IllustrationsNote b062; ImprintIDType x445; ImprintName b079; InitialPrintRun k167
InsertPointType x574; InsertPointValue x575; KeyNames b040; LanguageCode b252; LanguageRole b253
LastPageNumber b287; LatestReprintNumber x446; LettersAfterNames b042; LevelSequenceNumber b284
ListName x432; LocationIDType j377; LocationName j349; MainAudience x583; MainSubject x425
MapScale b063; MarketDateRole j408; MarketPublishingStatus j407; MarketPublishingStatusNote x406
MarketReference x587; MeasureType x315; MeasureUnitCode c095; Measurement c094; MessageNote m183
MessageNumber m180; MessageRepeat m181; MinimumOrderQuantity j263; NameIDType x415; NameType x414
NamesAfterKey b041; NamesBeforeKey b039; NoCollection x411; NoContributor n339; NoEdition n386
NoPrefix x501; NoProduct x507; NoResource x577; NoSupplement x579; NotificationType a002; Number b257
NumberOfCopies x323; NumberOfIllustrations b125; NumberOfItemsOfThisForm x322; NumberOfPages b061
ONIXMessage ONIXmessage; OccurrenceDateRole x554; OnHand j350; OnOrder j351; OrderQuantityMinimum x532
OrderQuantityMultiple x533; OrderTime j144; PackQuantity j145; PalletQuantity x545; PartNumber x410
Percent b337; PersonName b036; PersonNameInverted b037; PositionOnList x433; PositionOnProduct x313
PostalCode x590; PrefixToKey b247; PriceAmount j151; PriceCode x468; PriceCodeType x465
PriceCodeTypeName x477; PriceConditionQuantityType x464; PriceConditionType x463
PriceConstraintStatus x530; PriceConstraintType x529; PriceConstraintUnit x531; PriceDateRole x476
PriceIDType x506; PricePartDescription x535; PricePer j239; PriceQualifier j261; PriceStatus j266
PriceType x462; PriceTypeDescription j262; PrimaryContentType x416; PrimaryPart x457
PrintedOnProduct x301; PrizeCode g129; PrizeCountry g128; PrizeIDType x589; PrizeJury g343
PrizeName g126; PrizeRegion x556; PrizeStatement x503; PrizeYear g127; ProductAvailability j396
ProductClassificationCode b275; ProductClassificationType b274; ProductClassificationTypeName x555
ProductComposition x314; ProductContactIDType x483; ProductContactName x484; ProductContactRole x482
ProductContentType b385; ProductForm b012; ProductFormDescription b014; ProductFormDetail b333
ProductFormFeatureDescription b336; ProductFormFeatureType b334; ProductFormFeatureValue b335
ProductIDType b221; ProductPackaging b225; ProductRelationCode x455; ProfessionalPosition b045
PromotionCampaign k165; PromotionContact k166; Proximity x502; PublisherIDType x447; PublisherName b081
PublishingDateRole x448; PublishingRole b291; PublishingStatus b394; PublishingStatusNote b395
Quantity x320; QuantityUnit x466; ROWSalesRightsType x456; Rate x505; Rating x525; RatingLimit x526
RatingUnits x527; RecordReference a001; RecordSourceIDType x311; RecordSourceName a197
RecordSourceType a194; RegionCode b398; RegionsExcluded x452; RegionsIncluded x450; ReissueDate j365
ReissueDescription j366; ReligiousTextFeatureCode b359; ReligiousTextFeatureDescription b360
ReligiousTextFeatureType b358; ReligiousTextIdentifier b376; ReprintDetail k309; Reserved x536
ResourceContentType x436; ResourceFeatureType x438; ResourceFileContentDescription x576
ResourceFileDateRole x573; ResourceFileDescription x571; ResourceFileDetail x567
ResourceFileFeatureDescription x570; ResourceFileFeatureType x568; ResourceFileFeatureValue x569
ResourceFileLink x572; ResourceForm x441; ResourceIDType x565; ResourceLink x435; ResourceMode x437
ResourceRole x566; ResourceVersionFeatureType x442; ReturnsCode j269; ReturnsCodeType j268
ReturnsCodeTypeName x460; ReturnsNote x528; SalesOutletIDType b393; SalesOutletName b382
SalesRestrictionNote x453; SalesRestrictionType b381; SalesRightsType b089; ScriptCode x420
SenderIDType m379; SenderName x298; SentDateTime x307; SequenceNumber b034; SourceName x330
SourceTitle x428; SourceType x431; SpecificationBundleNameTypeName x558
SpecificationBundleNameValue x559; SpecificationDescription x564; SpecificationDetail x560
SpecificationFeatureDescription x563; SpecificationFeatureType x561; SpecificationFeatureValue x562
StartDate b324; StartTime x542; StockQuantityCode j297; StockQuantityCodeType j293
StockQuantityCodeTypeName j296; StreetAddress x552; StudyBibleType b389; SubjectCode b069
SubjectDateRole x534; SubjectHeadingText b070; SubjectSchemeIdentifier b067; SubjectSchemeName b171
SubjectSchemeVersion b068; Subtitle b029; SuffixToKey b248; SupplierCodeType x458
SupplierCodeTypeName x513; SupplierCodeValue x459; SupplierIDType j345; SupplierName j137
SupplierRole j292; SupplyContactIDType x538; SupplyContactName x539; SupplyContactRole x537
SupplyDateRole x461; TaxAmount x474; TaxExempt x546; TaxRateCode x471; TaxRatePercent x472; TaxType x470
TaxableAmount x473; TelephoneNumber j270; Text d104; TextAuthor d107; TextItemIDType b285
TextItemType b290; TextSourceCorporate b374; TextSourceDescription x557; TextSourceLink x581
TextType x426; ThesisPresentedTo b369; ThesisType b368; ThesisYear b370; TitleElementLevel x409
TitlePrefix b030; TitleStatement x478; TitleText b203; TitleType b202; TitleWithoutPrefix b031
TitlesAfterNames b043; TitlesBeforeNames b038; ToLanguage x413; ToQuantity x514; TradeCategory b384
UnnamedPersons b249; UnpricedItemType j192; VelocityMetric x504; VenueName x551; VenueNote x553
WebsiteDescription b294; WebsiteLink b295; WebsiteRole b367; WorkIDType b201; WorkRelationCode x454
YearOfAnnual b020`;

const COMPOSITES = `
AVItem AVItemIdentifier Addressee AddresseeIdentifier AffiliationIdentifier AgentIdentifier
AlternativeName AncillaryContent Audience AudienceRange Barcode BatchBonus Bible BodyManifest
BodyResource CitedContent CollateralDetail Collection CollectionIdentifier CollectionSequence
ComparisonProductPrice Complexity Conference ConferenceSponsor ConferenceSponsorIdentifier ContentDate
ContentDetail ContentItem Contributor ContributorDate ContributorPlace ContributorReference
CopyrightOwner CopyrightOwnerIdentifier CopyrightStatement CoverManifest CoverResource DescriptiveDetail
Discount DiscountCoded EpubLicense EpubLicenseDate EpubLicenseExpression EpubUsageConstraint
EpubUsageLimit Event EventIdentifier EventOccurrence EventSponsor EventSponsorIdentifier Extent Funding
FundingIdentifier Header Imprint ImprintIdentifier InsertManifest InsertPoint InsertResource Language
LocationIdentifier Market MarketDate MarketPublishingDetail Measure NameAsSubject NameIdentifier
NewSupplier ONIXMessage OccurrenceDate OnOrderDetail PageRun Price PriceCoded PriceCondition
PriceConditionQuantity PriceConstraint PriceConstraintLimit PriceDate PriceIdentifier Prize
PrizeIdentifier Product ProductClassification ProductContact ProductContactIdentifier ProductFormFeature
ProductIdentifier ProductPart ProductSupply ProductionDetail ProductionManifest ProfessionalAffiliation
PromotionDetail PromotionalEvent Publisher PublisherIdentifier PublisherRepresentative PublishingDate
PublishingDetail RecordSourceIdentifier Reissue RelatedMaterial RelatedProduct RelatedWork ReligiousText
ReligiousTextFeature ResourceFeature ResourceFileDate ResourceFileFeature ResourceIdentifier
ResourceVersion ResourceVersionFeature ReturnsConditions ReviewRating SalesOutlet SalesOutletIdentifier
SalesRestriction SalesRights Sender SenderIdentifier SpecificationBundleName SpecificationFeature Stock
StockQuantityCoded Subject SubjectDate SupplementManifest Supplier SupplierIdentifier SupplierOwnCoding
SupplyContact SupplyContactIdentifier SupplyDate SupplyDetail SupportingResource Tax Territory
TextContent TextItem TextItemIdentifier TimeRun TitleDetail TitleElement Velocity Website WorkIdentifier`;

/** Data elements that only ONIX 2.1 has (memory): enough to read old messages with short tags. */
const OLD_DATA = `
AvailabilityCode j141; BASICMainSubject b064; BASICVersion b200; BICMainSubject b065; BICVersion b066
DistinctiveTitle b028; EAN13 b005; EditionTypeCode b056; EpubType b211; ExpectedShipDate j142; ISBN b004
LanguageOfText b059; MeasureTypeCode c093; NumberWithinSeries b019; OnSaleDate j143
OriginalLanguage b060; PriceTypeCode j148; PublicationDate b003; RelationCode h208; RightsCountry b090
RightsTerritory b388; TextFormat d103; TextTypeCode d102; TitleOfSeries b018; YearFirstPublished b088`;

/** Composites that only ONIX 2.1 has (memory). */
const OLD_COMPOSITES = 'Title Series OtherText Set NotForSale MediaFile';

/** Elements of 3.1 that 3.0 does not have, and the other way round. */
const ONLY = {
  '3.0': `AudienceCode Conference ConferenceAcronym ConferenceDate ConferenceName ConferenceNumber ConferencePlace ConferenceRole
    ConferenceSponsor ConferenceSponsorIDType ConferenceSponsorIdentifier ConferenceTheme CurrencyZone DateFormat Gender
    PromotionContact Reissue ReissueDate ReissueDescription`,
  '3.1': `AffiliationIDType AffiliationIdentifier AwardingBody CollectionElementLevel CollectionFrequency CopyrightStatementText
    EpubLicenseDate EpubLicenseDateRole MainAudience MarketReference PostalCode PrizeIDType PrizeIdentifier TextSourceLink`,
};

const pairs = (text: string) =>
  text
    .split(/[;\n]/)
    .map((pair) => pair.trim().split(' '))
    .filter((pair): pair is [string, string] => pair.length === 2);
const words = (text: string) => text.split(/\s+/).filter(Boolean);

const SHORT = new Map<string, string>([
  ...words(`${COMPOSITES} ${OLD_COMPOSITES}`).map((name): [string, string] => [name, name.toLowerCase()]),
  ['ONIXMessage', 'ONIXmessage'],
  ...pairs(OLD_DATA),
  ...pairs(DATA),
]);
const REFERENCE = new Map([...SHORT].map(([name, short]) => [short, name]));
const DATA_NAMES = new Set(pairs(`${DATA};${OLD_DATA}`).map(([name]) => name));

/** The tag of an element in a tag set; what is not known stays as it is. */
export function tagOf(name: string, tags: TagSet): string {
  return tags === 'reference' ? name : (SHORT.get(name) ?? name);
}

/** The reference name of a tag of either set; what is not known stays as it is. */
export function referenceName(tag: string): string {
  return REFERENCE.get(tag) ?? tag;
}

/** Whether an element holds text (perhaps with XHTML in it), not other ONIX elements. */
export function isData(name: string): boolean {
  return DATA_NAMES.has(name);
}

const ONLY_NAMES = { '3.0': new Set(words(ONLY['3.0'])), '3.1': new Set(words(ONLY['3.1'])) };

/** Whether a version of the standard has an element of this reference name. */
export function isKnown(name: string, version: '3.0' | '3.1'): boolean {
  return SHORT.has(name) && !ONLY_NAMES[version === '3.0' ? '3.1' : '3.0'].has(name);
}
