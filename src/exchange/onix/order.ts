// The order in which ONIX 3 wants the parts of a composite (STANDARDS.md section C2, read out of the schemas).

const ORDER: Record<string, string> = {
  Product:
    'RecordReference NotificationType DeletionText RecordSourceType RecordSourceIdentifier RecordSourceName ProductIdentifier Barcode DescriptiveDetail CollateralDetail PromotionDetail ContentDetail PublishingDetail RelatedMaterial ProductionDetail ProductSupply',
  DescriptiveDetail:
    'ProductComposition ProductForm ProductFormDetail ProductFormFeature ProductPackaging ProductFormDescription TradeCategory PrimaryContentType ProductContentType Measure CountryOfManufacture EpubTechnicalProtection EpubUsageConstraint EpubLicense MapScale ProductClassification ProductPart Collection NoCollection TitleDetail ThesisType ThesisPresentedTo ThesisYear Contributor ContributorStatement NoContributor Event Conference EditionType EditionNumber EditionVersionNumber EditionStatement NoEdition ReligiousText Language Extent Illustrated NumberOfIllustrations IllustrationsNote AncillaryContent Subject NameAsSubject AudienceCode Audience AudienceRange AudienceDescription Complexity',
  CollateralDetail: 'TextContent CitedContent SupportingResource Prize',
  PublishingDetail:
    'Imprint Publisher CityOfPublication CountryOfPublication ProductContact PublishingStatus PublishingStatusNote PublishingDate LatestReprintNumber CopyrightStatement CopyrightStatementText SalesRights ROWSalesRightsType SalesRestriction',
  RelatedMaterial: 'RelatedWork RelatedProduct',
};

const PLACES = new Map(
  Object.entries(ORDER).map(([parent, names]) => [
    parent,
    new Map(names.split(' ').map((name, place) => [name, place])),
  ]),
);

/** The place of a child in its parent; what the standard does not know there is −1. */
export function placeOf(parent: string, name: string): number {
  return PLACES.get(parent)?.get(name) ?? -1;
}
