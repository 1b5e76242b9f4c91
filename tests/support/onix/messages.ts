/** A message of two editions and three formats, in 3.0 with reference names. */
export const SEED_MESSAGE = `<?xml version="1.0" encoding="UTF-8"?>
<ONIXMessage release="3.0" xmlns="http://ns.editeur.org/onix/3.0/reference">
<Header><Sender><SenderName>Broadside Wholesale</SenderName></Sender><SentDateTime>20261125</SentDateTime>
<DefaultCurrencyCode>GBP</DefaultCurrencyCode></Header>
${product('9798969999503', 'BC', 'Marsh Bells', 1, '<RelatedProduct><ProductRelationCode>05</ProductRelationCode><ProductIdentifier><ProductIDType>15</ProductIDType><IDValue>9798969999510</IDValue></ProductIdentifier></RelatedProduct>', '07')}
${product('9798969999510', 'BC', 'Marsh Bells', 2, '<RelatedProduct><ProductRelationCode>03</ProductRelationCode><ProductIdentifier><ProductIDType>15</ProductIDType><IDValue>9798969999503</IDValue></ProductIdentifier></RelatedProduct><RelatedProduct><ProductRelationCode>06</ProductRelationCode><ProductIdentifier><ProductIDType>15</ProductIDType><IDValue>9798969999527</IDValue></ProductIdentifier></RelatedProduct>', '04')}
${product('9798969999527', 'ED', 'Marsh Bells', 2, '', '04')}
</ONIXMessage>
`;

function product(
  isbn: string,
  form: string,
  title: string,
  edition: number,
  related: string,
  status: string,
): string {
  return `<Product><RecordReference>bw.${isbn}</RecordReference><NotificationType>03</NotificationType>
<ProductIdentifier><ProductIDType>15</ProductIDType><IDValue>${isbn}</IDValue></ProductIdentifier>
<DescriptiveDetail><ProductComposition>00</ProductComposition><ProductForm>${form}</ProductForm>
<TitleDetail><TitleType>01</TitleType><TitleElement><TitleElementLevel>01</TitleElementLevel><TitleText>${title}</TitleText></TitleElement></TitleDetail>
<Contributor><SequenceNumber>1</SequenceNumber><ContributorRole>A01</ContributorRole><PersonNameInverted>Oskarsdal, Maren</PersonNameInverted></Contributor>
<EditionNumber>${edition}</EditionNumber><Language><LanguageRole>01</LanguageRole><LanguageCode>eng</LanguageCode></Language></DescriptiveDetail>
<PublishingDetail><Imprint><ImprintName>Halyard &amp; Fen</ImprintName></Imprint><PublishingStatus>${status}</PublishingStatus>
<PublishingDate><PublishingDateRole>01</PublishingDateRole><Date>20200501</Date></PublishingDate></PublishingDetail>
<RelatedMaterial>${related}</RelatedMaterial>
<ProductSupply><SupplyDetail><Supplier><SupplierRole>04</SupplierRole><SupplierName>Broadside Wholesale</SupplierName></Supplier>
<ProductAvailability>20</ProductAvailability><PackQuantity>12</PackQuantity><Price><PriceType>02</PriceType><PriceAmount>9.99</PriceAmount></Price></SupplyDetail></ProductSupply></Product>`;
}

/** A message of ONIX 2.1 with short tags, a document type that names its own file and named characters (memory: no schema at hand). */
export const MESSAGE_21 = `<?xml version="1.0" encoding="ISO-8859-1"?>
<!DOCTYPE ONIXmessage SYSTEM "http://www.editeur.org/onix/2.1/short/onix-international.dtd">
<ONIXmessage release="2.1"><header><m174>Broadside Wholesale</m174></header>
<product><a001>bw.1</a001><a002>03</a002>
<productidentifier><b221>15</b221><b244>9798969999534</b244></productidentifier>
<b012>BB</b012><b333>B502</b333>
<title><b202>01</b202><b030>The</b030><b031>Drowned Caf&eacute;</b031><b029>A Guide</b029></title>
<series><b018>Fen Walks</b018><b019>3</b019></series>
<contributor><b034>1</b034><b035>A01</b035><b035>A12</b035><b037>Quayle, Ilse</b037></contributor>
<b057>2</b057><b058>Second edition</b058>
<language><b253>01</b253><b252>eng</b252></language>
<b061>212</b061><b064>TRV009000</b064>
<subject><b067>20</b067><b070>fens; caf&#233;s</b070></subject>
<b073>02</b073><audiencerange><b074>17</b074><b075>03</b075><b076>8</b076><b075>04</b075><b076>12</b076></audiencerange>
<othertext><d102>01</d102><d103>06</d103><d104>Where to drink tea &mdash; and where not.</d104></othertext>
<othertext><d102>08</d102><d104>Kept beside.</d104></othertext>
<imprint><b079>Halyard &amp; Fen</b079></imprint>
<publisher><b291>01</b291><b081>Halyard &amp; Fen</b081></publisher>
<b394>04</b394><b003>20210915</b003>
<measure><c093>04</c093><c094>8.5</c094><c095>in</c095></measure><measure><c093>05</c093><c094>5.5</c094><c095>in</c095></measure>
<relatedproduct><h208>03</h208><productidentifier><b221>02</b221><b244>0306406152</b244></productidentifier></relatedproduct>
<supplydetail><j137>Broadside Wholesale</j137><j396>20</j396><price><j148>02</j148><j151>14.99</j151><j152>GBP</j152></price></supplydetail>
</product></ONIXmessage>
`;
